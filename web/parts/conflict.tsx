/** Two people changed the same thing: both versions side by side, and one press to keep either. */
interface ConflictProps {
  /** “Wall bed”. */
  readonly what: string;
  readonly rows: readonly { readonly name: string; readonly mine: string; readonly theirs: string }[];
  readonly keepMine: () => void;
  readonly keepTheirs: () => void;
}

export function Conflict({ what, rows, keepMine, keepTheirs }: ConflictProps) {
  const differing = rows.filter(({ mine, theirs }) => mine !== theirs);
  return (
    <div class="conflict" role="alert">
      <p class="lead">Somebody else changed {what} meanwhile.</p>
      <table>
        <thead>
          <tr>
            <th scope="col">Field</th>
            <th scope="col">Typed here</th>
            <th scope="col">Saved by them</th>
          </tr>
        </thead>
        <tbody>
          {differing.map(({ name, mine, theirs }) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              <td>{mine || "nothing"}</td>
              <td>{theirs || "nothing"}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p class="acts">
        <button type="button" class="btn" onClick={keepMine}>
          Keep mine
        </button>
        <button type="button" class="btn" onClick={keepTheirs}>
          Keep theirs
        </button>
      </p>
    </div>
  );
}
