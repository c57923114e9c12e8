/** Makes what runs whole pours in a worker; its code is fetched when the first pour is wanted. */
export async function makeClient() {
  const { createPourClient } = await import('$src/worker/client');
  return createPourClient();
}

/** The same for the sketches that follow a hand. */
export async function makeSketchClient() {
  const { createSketchClient } = await import('$src/worker/client');
  return createSketchClient();
}
