// A closed triangle mesh. Every directed edge has exactly one twin the other way round; triangles wind anticlockwise
// seen from outside, so the enclosed volume is positive.

export interface Mesh {
  /** x, y, z in mm, interleaved; 3 × vertex count. */
  readonly positions: Float32Array;
  /** Three vertex indices a triangle. Vertices are shared: topology is in the indices, never found by comparing places. */
  readonly indices: Uint32Array;
  /** Where one flat-shaded face ends and the next begins is found from the angle between triangles: creases over 30° are sharp. */
  readonly creaseDeg: 30;
}
