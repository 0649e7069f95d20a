// Chapter rings, on the frame or on the arbor that carries them. A ring is engraved once and kept while its content stays.
import { memo, useEffect, useMemo, useState } from "react";
import type { Mesh } from "three";
import type { Laws, Movement } from "../../geometry/index.ts";
import type { Metals } from "../metal/metals.ts";
import type { Stage } from "../stage.ts";
import { ringGeometry, ringTexture } from "./face.ts";
import { followsLaw, NO_LAWS, ringsOf, type Ring } from "./rings.ts";

interface Props {
  readonly stage: Stage;
  readonly movement: Movement;
  readonly metals: Metals;
  readonly hidden: ReadonlySet<string>;
  /** Names of what is thinned. */
  readonly thin: ReadonlySet<string>;
}

export const Dials = memo(function Dials({ stage, movement, metals, hidden, thin }: Props) {
  const laws = useLaws(followsLaw(movement));
  const rings = useMemo(() => ringsOf(movement, laws), [movement, laws]);
  const shown = rings.filter((ring) => !hidden.has(ring.display ?? "") && !hidden.has(movement.arbors[ring.arbor ?? -1]?.id ?? ""));
  return shown.map((ring) => <Dial key={ring.id} content={JSON.stringify(ring)} thin={thin.has(dialName(ring))} stage={stage} metals={metals} />);
});

/** The laws of uneven rings, once they are fetched; until then such a ring stands without its marks. */
function useLaws(wanted: boolean): Laws {
  const [laws, setLaws] = useState<Laws | null>(null);
  useEffect(() => {
    if (!wanted || laws) return;
    let gone = false;
    void import("./laws.ts").then(({ marksBy }) => { if (!gone) setLaws(() => marksBy); });
    return () => { gone = true; };
  }, [wanted, laws]);
  return laws ?? NO_LAWS;
}

const dialName = (ring: Pick<Ring, "id">) => `dial of ${ring.id}`;

interface DialProps {
  /** The ring as text, so that one of the same content is not engraved again. */
  readonly content: string;
  readonly thin: boolean;
  readonly stage: Stage;
  readonly metals: Metals;
}

const Dial = memo(function Dial({ content, thin, stage, metals }: DialProps) {
  const ring = useMemo(() => JSON.parse(content) as Ring, [content]);
  const shape = useMemo(() => ringGeometry(ring), [ring]);
  const texture = useMemo(() => ringTexture(ring), [ring]);
  const material = useMemo(() => metals.face(texture, thin), [metals, texture, thin]);
  useEffect(() => () => { shape.dispose(); texture?.dispose(); }, [shape, texture]);
  useEffect(() => () => material.dispose(), [material]);
  return (
    <mesh name={dialName(ring)} geometry={shape} material={material} position={[ring.x, ring.y, 0]} castShadow={!thin} receiveShadow
      ref={(mesh: Mesh | null) => { if (mesh) stage.rings.set(ring.id, { mesh, carrier: ring.carrier }); else stage.rings.delete(ring.id); }} />
  );
});
