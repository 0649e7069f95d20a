// The movement in three dimensions: one group for each arbor, placed and turned in the frame loop; meshes, metals and
// dials by rendering, when the movement or the choice changes. z is up out of the dial, as in the kernel.
import { AdaptiveDpr } from "@react-three/drei/core/AdaptiveDpr";
import { extend, useFrame, useThree } from "@react-three/fiber";
import { memo, useEffect, useLayoutEffect, useMemo, useRef, useState } from "react";
import { DirectionalLight, Group, Mesh, PerspectiveCamera, type BufferGeometry } from "three";
import { motionOf, toothPhases, type Movement } from "../geometry/index.ts";
import { Dials } from "./dials/Dials.tsx";
import { createFrames, type Posed } from "./frames.ts";
import { placeOf, thingsIn } from "./marks/quarrel.ts";
import { createMetals, type Mark, type Metals } from "./metal/metals.ts";
import { createPace } from "./pace.ts";
import type { MovementViewProps } from "./props.ts";
import { hiding } from "./sight.ts";
import { createLibrary } from "./solids/library.ts";
import { liftsOf } from "./solids/lift.ts";
import { solidsOf, type Solid } from "./solids/solids.ts";
import type { Stage } from "./stage.ts";

extend({ Group, Mesh, DirectionalLight });

export interface SceneProps extends MovementViewProps {
  readonly stage: Stage;
  /** Without shadows: where a picture is drawn without a graphics card. */
  readonly plain: boolean;
}

const NONE: ReadonlySet<string> = new Set();

export function Scene(props: SceneProps) {
  const { stage, movement, sheet, theme, plates, cut, finding, plain } = props;
  const library = useMemo(() => createLibrary<BufferGeometry>(), []);
  const metals = useMemo(() => createMetals(), []);
  const solids = useMemo(() => solidsOf(movement, library), [movement, library]);
  const posed = useMemo(() => ({ movement, motion: motionOf(movement), lifts: liftsOf(movement, sheet) }), [movement, sheet]);
  const thin = useThinned(stage, movement, finding);
  const invalidate = useThree((s) => s.invalidate);

  useLayoutEffect(() => library.close(), [library, solids]);
  useEffect(() => () => { library.empty(); metals.dispose(); }, [library, metals]);
  useLayoutEffect(() => metals.set({ theme, plates, cut, bound: stage.bound }), [metals, theme, plates, cut, stage, movement]);
  useLayoutEffect(() => {
    stage.redraw = () => invalidate();
    invalidate();
  });

  return (
    <>
      <AdaptiveDpr />
      <Frames stage={stage} posed={posed} plain={plain} theme={theme} />
      <Things stage={stage} movement={movement} solids={solids} metals={metals} thin={thin}
        chosen={props.chosen} finding={finding} hidden={props.hidden ?? NONE} />
      <Dials stage={stage} movement={movement} metals={metals} thin={thin} hidden={props.hidden ?? NONE} />
    </>
  );
}

/** What stands between the eye and the finding's place, found afresh whenever the view comes to rest. */
function useThinned(stage: Stage, movement: Movement, finding: SceneProps["finding"]): ReadonlySet<string> {
  const [thin, setThin] = useState(NONE);
  useEffect(() => {
    const place = finding && placeOf(finding, movement);
    stage.rested = () => {
      const found = place ? hiding(stage, place, new Set(thingsIn(finding, movement))) : NONE;
      setThin((before) => (before.size === found.size && [...found].every((id) => before.has(id)) ? before : found));
    };
    if (!place) setThin(NONE);
    else stage.seen();
    return () => { stage.rested = null; };
  }, [stage, movement, finding]);
  return thin;
}

interface FramesProps { readonly stage: Stage; readonly posed: Posed; readonly plain: boolean; readonly theme: "light" | "dark" }

function Frames({ stage, posed, plain, theme }: FramesProps) {
  const sun = useRef<DirectionalLight>(null);
  const frame = useMemo(() => createFrames(stage), [stage]);
  const isSlow = useMemo(() => createPace(plain), [plain]);
  const fineness = useRef(1);
  useFrame(({ camera, scene, clock, invalidate, gl, performance }) => {
    if (!(camera instanceof PerspectiveCamera)) return;
    const { current } = performance, sharpened = current > fineness.current;
    fineness.current = current;
    if (!sharpened && isSlow(1000 * clock.elapsedTime)) performance.regress();
    if (frame(1000 * clock.elapsedTime, posed, scene, camera, sun.current)) invalidate();
    gl.shadowMap.needsUpdate = true;
  });
  useEffect(() => {
    const light = sun.current;
    if (light) light.parent?.add(light.target);
    return () => { light?.target.removeFromParent(); };
  }, []);
  return (
    <directionalLight ref={sun} intensity={theme === "light" ? 1.5 : 1.3} color="#fff6e6" castShadow={!plain}
      shadow-mapSize={[2048, 2048]} shadow-radius={3.2} shadow-bias={-0.0006} shadow-normalBias={0.05} />
  );
}

interface ThingsProps {
  readonly stage: Stage;
  readonly movement: Movement;
  readonly solids: readonly Solid[];
  readonly metals: Metals;
  readonly thin: ReadonlySet<string>;
  readonly chosen: string | null;
  readonly finding: SceneProps["finding"];
  readonly hidden: ReadonlySet<string>;
}

const Things = memo(function Things({ stage, movement, solids, metals, thin, chosen, finding, hidden }: ThingsProps) {
  const phases = useMemo(() => toothPhases(movement), [movement]);
  const marks = useMemo(() => marksOf(movement, chosen, finding), [movement, chosen, finding]);
  const drawn = (solid: Solid) => {
    const mark = marks.get(solid.id) ?? null;
    return (
      <mesh key={solid.id} name={solid.id} geometry={solid.shape} castShadow={!thin.has(solid.id) && solid.frame !== "plate"} receiveShadow
        ref={(mesh: Mesh | null) => { if (mesh) stage.meshes.set(solid.id, mesh); else stage.meshes.delete(solid.id); }}
        material={metals.of({ metal: solid.metal, mark, thin: thin.has(solid.id), frame: solid.frame })}
        position-x={solid.arbor === null ? solid.x : 0} position-y={solid.arbor === null ? solid.y : 0}
        rotation-z={phases.get(solid.id) ?? 0} />
    );
  };
  const shown = solids.filter((s) => !hidden.has(s.id) && !hidden.has(movement.arbors[s.arbor ?? -1]?.id ?? ""));
  return (
    <>
      {movement.arbors.map((worked, i) => (
        <group key={worked.id} ref={(group: Group | null) => { stage.groups[i] = group; }}>
          {shown.filter((s) => s.arbor === i).map(drawn)}
        </group>
      ))}
      {shown.filter((s) => s.arbor === null).map(drawn)}
    </>
  );
});

/** A finding's colours go before the choice's; an arbor that is chosen marks all that is fixed on it. */
function marksOf(movement: Movement, chosen: string | null, finding: SceneProps["finding"]): Map<string, Mark> {
  const marks = new Map<string, Mark>();
  if (chosen !== null) {
    marks.set(chosen, "chosen");
    for (const part of movement.arbors[movement.arborIndex.get(chosen) ?? -1]?.arbor.parts ?? []) marks.set(part.id, "chosen");
  }
  if (finding) for (const id of thingsIn(finding, movement)) marks.set(id, finding.severity);
  return marks;
}
