/** Done, and how to take it back: stands where the action was until the next entry. */
interface UndoLineProps {
  readonly done: string;
  readonly undo?: (() => void) | undefined;
  /** What a screen reader hears after “Undo”. */
  readonly of?: string;
}

export function UndoLine({ done, undo, of = "" }: UndoLineProps) {
  return (
    <div class="undo">
      <p role="status">{done}</p>
      {undo && (
        <button type="button" class="btn word" onClick={undo}>
          Undo{of && <span class="vh"> {of}</span>}
        </button>
      )}
    </div>
  );
}
