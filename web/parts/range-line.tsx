/** Low, likely and high on one line: a line with a dot, an upright stroke where something is to be compared. The words stand beside it. */
interface RangeLineProps {
  readonly low: number;
  readonly likely: number;
  readonly high: number;
  /** Value at the right end; the same in all lines that are compared. */
  readonly max: number;
  readonly width: number;
  readonly mark?: number;
}

export function RangeLine({ low, likely, high, max, width, mark }: RangeLineProps) {
  const x = (value: number): number => 3 + (Math.min(value, max) / max) * (width - 8);
  return (
    <svg viewBox={`0 0 ${width} 14`} width={width} height={14} aria-hidden="true">
      <line x1={3} x2={width - 3} y1={13} y2={13} class="k-rule" />
      <line x1={x(low)} x2={x(high)} y1={7} y2={7} class="k-range" />
      <circle cx={x(likely)} cy={7} r={3.5} class="k-dot" />
      {mark !== undefined && <line x1={x(mark)} x2={x(mark)} y1={1} y2={13} class="k-axis" />}
    </svg>
  );
}
