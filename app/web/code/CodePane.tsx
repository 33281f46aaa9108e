/** Source text in the editor, with the places of its faults marked. */
import { useEffect, useRef, useState } from 'react';
import type { Diagnostic } from '../../../engine/diagnostic.ts';

interface Props {
  /** What the text is, for those who cannot see it. */
  readonly label: string;
  readonly language: string;
  readonly text: string;
  /** Left out: read only. */
  readonly onChange?: (text: string) => void;
  readonly faults?: readonly Diagnostic[];
}

type Monaco = typeof import('./monaco.ts')['monaco'];
type Editor = ReturnType<Monaco['editor']['create']>;

const none: readonly Diagnostic[] = [];

export function CodePane({ label, language, text, onChange, faults = none }: Props) {
  const box = useRef<HTMLDivElement>(null);
  const [made, setMade] = useState<{ monaco: Monaco; editor: Editor } | null>(null);
  const [fault, setFault] = useState(false);
  const readOnly = onChange === undefined;
  // The editor outlives many renderings; it calls the latest of these.
  const latest = useRef({ text, onChange, label });
  latest.current = { text, onChange, label };

  useEffect(() => {
    let gone = false;
    let editor: Editor | null = null;
    import('./monaco.ts')
      .then(({ monaco }) => {
        if (gone || box.current === null) return;
        editor = monaco.editor.create(box.current, {
          value: latest.current.text,
          language,
          readOnly,
          domReadOnly: readOnly,
          tabFocusMode: readOnly,
          ariaLabel: latest.current.label,
          automaticLayout: true,
          minimap: { enabled: false },
          scrollBeyondLastLine: false,
          fontSize: 13,
          lineHeight: 20,
          padding: { top: 12, bottom: 12 },
          lineNumbersMinChars: 4,
          renderLineHighlight: readOnly ? 'none' : 'line',
          overviewRulerLanes: 0,
          wordBasedSuggestions: 'off',
          quickSuggestions: false,
          links: false,
          contextmenu: false,
          fixedOverflowWidgets: true,
          unicodeHighlight: { ambiguousCharacters: false },
          smoothScrolling: false,
          tabSize: 2,
        });
        const own = editor;
        own.onDidChangeModelContent(() => {
          const now = own.getValue();
          if (now !== latest.current.text) latest.current.onChange?.(now);
        });
        setMade({ monaco, editor: own });
      })
      .catch(() => setFault(true));
    return () => {
      gone = true;
      editor?.getModel()?.dispose();
      editor?.dispose();
      setMade(null);
    };
  }, [language, readOnly]);

  useEffect(() => {
    if (made !== null && made.editor.getValue() !== text) made.editor.setValue(text);
  }, [made, text]);

  useEffect(() => {
    made?.editor.updateOptions({ ariaLabel: label });
  }, [made, label]);

  useEffect(() => {
    const model = made?.editor.getModel();
    if (made === null || model == null) return;
    const { monaco } = made;
    const markers = faults.flatMap(({ span, severity, message, advice }) => {
      if (span === undefined) return [];
      const start = model.getPositionAt(span.start);
      const end = model.getPositionAt(Math.max(span.end, span.start + 1));
      return {
        severity: severity === 'error' ? monaco.MarkerSeverity.Error : monaco.MarkerSeverity.Warning,
        message: `${message}\n${advice}`,
        startLineNumber: start.lineNumber,
        startColumn: start.column,
        endLineNumber: end.lineNumber,
        endColumn: end.column,
      };
    });
    monaco.editor.setModelMarkers(model, 'weftlight', markers);
  }, [made, faults]);

  return (
    <div className="code-pane" data-ready={made !== null}>
      <div className="monaco-home" ref={box} />
      {made === null && !fault && <p className="whisper">Unrolling the text…</p>}
      {fault && <pre>{text}</pre>}
    </div>
  );
}
