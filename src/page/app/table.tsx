/** A table that scrolls in itself and goes to a spreadsheet by one button. */
import { Button } from './controls';
import { useState } from 'preact/hooks';

/** Cells as text; the first of a row names it. */
export function Table({
  caption,
  heads,
  rows,
}: {
  readonly caption: string;
  readonly heads: readonly string[];
  readonly rows: readonly (readonly string[])[];
}) {
  const [isCopied, setCopied] = useState(false);
  const copy = (): void => {
    const text = [heads, ...rows].map((row) => row.join('\t')).join('\n');
    void navigator.clipboard.writeText(text).then(() => {
      setCopied(true);
    });
  };
  return (
    <div class="scroll" tabIndex={0} role="region" aria-label={caption}>
      <table>
        <caption>
          {caption}{' '}
          <Button class="quiet" onPress={copy}>
            {isCopied ? 'Copied' : 'Copy'}
          </Button>
        </caption>
        <thead>
          <tr>
            {heads.map((head) => (
              <th scope="col">{head}</th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(([name, ...cells]) => (
            <tr>
              <th scope="row">{name}</th>
              {cells.map((cell) => (
                <td>{cell}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
