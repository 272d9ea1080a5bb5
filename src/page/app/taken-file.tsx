/** A table or a drawing that somebody chose or dropped, as text with its name. */
import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import type { NamedText } from '../../jobs/requests';
import { decodedDrawing } from '../../dxf/drawing-text';
import { decodedTable } from '../../table/table-text';

/** In whatever encoding a spreadsheet or a drawing program saved it. Throws InputError as `decodedDrawing` does. */
async function textOf(file: File): Promise<NamedText> {
  const bytes = new Uint8Array(await file.arrayBuffer());
  const isDrawing = /\.(?:dxf|rul)$/iu.test(file.name);
  const text = isDrawing ? decodedDrawing(bytes, file.name) : decodedTable(bytes);
  return { text, file: file.name };
}

/** What takes the first of some files, and the words of what could not be read of it. */
export function useTaken(onFile: (file: NamedText) => void): {
  readonly take: (files: FileList | null | undefined) => void;
  readonly trouble: ComponentChildren;
} {
  const [said, setSaid] = useState('');
  return {
    take: (files) => {
      const [file] = files ?? [];
      if (file === undefined) return;
      setSaid('');
      textOf(file).then(onFile, (error: unknown) => {
        setSaid(error instanceof Error ? error.message : String(error));
      });
    },
    trouble: said !== '' && (
      <span class="trouble" role="alert">
        {said}
      </span>
    ),
  };
}

/** A button by which a file is chosen; `endings` are those of drawings, if any may be. */
export function FileButton({
  endings = '',
  onFile,
  children,
}: {
  readonly endings?: string;
  readonly onFile: (file: NamedText) => void;
  readonly children: ComponentChildren;
}) {
  const { take, trouble } = useTaken(onFile);
  return (
    <>
      <label class="button">
        {children}
        <input
          type="file"
          accept={`.csv,.txt,.tsv,text/csv${endings}`}
          onChange={(event) => {
            take(event.currentTarget.files);
          }}
        />
      </label>
      {trouble}
    </>
  );
}
