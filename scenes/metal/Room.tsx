// Lights a scene by the generated room; made afresh for another theme and after the graphics context was lost.
import { useThree } from "@react-three/fiber";
import { useEffect, useState } from "react";
import { createRoom } from "./room.ts";

export function Room({ theme, plain }: { readonly theme: "light" | "dark"; readonly plain: boolean }) {
  const gl = useThree((s) => s.gl), scene = useThree((s) => s.scene), invalidate = useThree((s) => s.invalidate);
  const [restored, setRestored] = useState(0);
  useEffect(() => {
    const canvas = gl.domElement, again = () => setRestored((n) => n + 1);
    canvas.addEventListener("webglcontextrestored", again);
    return () => canvas.removeEventListener("webglcontextrestored", again);
  }, [gl]);
  useEffect(() => {
    const room = createRoom(gl, theme, plain);
    scene.environment = room.texture;
    invalidate();
    return () => { scene.environment = null; room.dispose(); };
  }, [gl, scene, theme, plain, restored, invalidate]);
  return null;
}
