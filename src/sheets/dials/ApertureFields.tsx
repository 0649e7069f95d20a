// The openings of a dial, through which a ring under it is seen.
import type { Dial, Movement } from "../../../geometry/index.ts";
import { addThing, takeAway } from "../../commands/edit.ts";
import type { Path } from "../../document/index.ts";
import { useActions } from "../../state/hooks.ts";
import { FieldAt } from "../making/Field.tsx";

export function ApertureFields({ movement, dial, at, name }: { readonly movement: Movement; readonly dial: Dial; readonly at: Path; readonly name: string }) {
  const { run } = useActions();
  const list = [...at, "apertures"], all = dial.apertures ?? [];
  const middle = Math.round(Math.max(2, ...dial.rings.map((r) => (r.insideDiameter + r.outsideDiameter) / 4)));
  return (
    <div className="apertures">
      {all.length > 0 && (
        <div className="scroll-x"><table aria-label={`Apertures of ${name}`}>
          <thead><tr><th>aperture</th><th>middle from the centre</th><th>middle at</th><th>from side to side</th><th>along the radius</th><th><span className="unseen">take away</span></th></tr></thead>
          <tbody>{all.map((_, k) => {
            const typed = (label: string, field: string) => <td><FieldAt movement={movement} path={[...list, k, field]} label={`${label} of aperture ${k + 1} of ${name}`} width="8ch" /></td>;
            return (
              <tr key={k}><td>{k + 1}</td>{typed("Radius", "radius")}{typed("Angle", "angle")}{typed("Width", "width")}{typed("Height", "height")}
                <td><button type="button" aria-label={`Take aperture ${k + 1} of ${name} away`} onClick={() => run(takeAway, { path: [...list, k] })}>Take away</button></td></tr>
            );
          })}</tbody>
        </table></div>
      )}
      <button type="button" onClick={() => run(addThing, { list, thing: { radius: middle, angle: 90, width: 30, height: 4 } })}>Another aperture</button>
    </div>
  );
}
