/** The hatch of what is over: 45°, so that it reads without its colour. Its id is used as fill="url(#id)". */
export function Hatch({ id }: { readonly id: string }) {
  return (
    <pattern id={id} width={5} height={5} patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
      <line x1={0} y1={0} x2={0} y2={5} class="k-hatch" />
    </pattern>
  );
}
