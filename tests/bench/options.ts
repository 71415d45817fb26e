/** `--name value` among the arguments of a bench suite. */
export function optionOf(args: readonly string[], name: string, usual: number): number {
  const at = args.indexOf(`--${name}`);
  if (at < 0) return usual;
  const value = Number(args[at + 1]);
  if (!Number.isFinite(value) || value <= 0) throw new RangeError(`--${name} takes a number above 0`);
  return value;
}
