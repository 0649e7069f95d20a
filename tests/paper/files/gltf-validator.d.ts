// What we use of the validator, which comes without types.
declare module "gltf-validator" {
  const validator: { validateBytes(bytes: Uint8Array): Promise<{ issues: { messages: readonly unknown[] } }> };
  export default validator;
}
