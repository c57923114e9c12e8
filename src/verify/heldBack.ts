/**
 * Reference pours with the gate on, whose moments the earlier code has sooner, and what each is held to [s]. It let the skin
 * hold a front at mesh faces alone, so that a running front bore a part of its force that hung on the mesh.
 */
export const HELD_BACK: Readonly<Record<string, number>> = { P2: 0.2, P3: 0.12, P4: 0.06, P5: 0.33 };

export const WHOLE_SKIN =
  'the skin bears its whole force wherever in a mesh cell the front is (noseForce in flow/gate.ts); the earlier code held it at mesh faces alone. So the slow limit with the gate is met, and meshes agree: see the check “Arrival as the mesh is refined”. With the gate off the two codes agree';
