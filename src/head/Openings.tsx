// How far the movement is opened to the eye: arbors lifted apart, the frame cut through, the plates thinned.
import { useActions, useNow } from "../state/hooks.ts";

export function Openings() {
  const { set } = useActions();
  const lift = useNow((s) => s.lift), cut = useNow((s) => s.cut), plates = useNow((s) => s.plates);
  const percent = (part: number) => (part === 0 ? "none" : `${Math.round(part * 100)} %`);
  const rows = [
    { label: "Lift", title: "Lift the arbors apart", now: lift, give: (to: number) => set({ lift: to }) },
    { label: "Cut", title: "Cut through the frame", now: cut, give: (to: number) => set({ cut: to }) },
    { label: "Plates", title: "Thin the plates", now: plates, give: (to: number) => set({ plates: to }) },
  ];
  return (
    <div className="three" role="group" aria-label="Opening the movement">
      {rows.map(({ label, title, now, give }) => (
        <label key={label} style={{ display: "contents" }} title={title}>
          <span>{label}</span>
          <input type="range" min={0} max={100} step={1} value={Math.round(now * 100)} aria-label={title} aria-valuetext={percent(now)}
            onChange={(event) => give(Number(event.target.value) / 100)} />
          <output>{percent(now)}</output>
        </label>
      ))}
    </div>
  );
}
