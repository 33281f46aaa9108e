/** The editor in the colours of the bench; see styles/tokens.css. */
import type { editor } from 'monaco-editor/editor/editor.api';

export const benchTheme: editor.IStandaloneThemeData = {
  base: 'vs-dark',
  inherit: true,
  rules: [
    { token: '', foreground: 'efe6d6' },
    { token: 'comment', foreground: '9d917f', fontStyle: 'italic' },
    { token: 'keyword', foreground: 'e6b65c' },
    { token: 'qualifier', foreground: 'c9a574' },
    { token: 'type', foreground: '9fc7b0' },
    { token: 'number', foreground: 'f0a58a' },
    { token: 'string', foreground: 'b9cf8f' },
    { token: 'given', foreground: '8fd0dc' },
    { token: 'builtin', foreground: 'd9c39a' },
    { token: 'gradient', foreground: 'd7a7d3' },
    { token: 'operator', foreground: 'c9bda9' },
    { token: 'delimiter', foreground: 'c9bda9' },
  ],
  colors: {
    'editor.background': '#191612',
    'editor.foreground': '#efe6d6',
    'editorLineNumber.foreground': '#8a7f6e',
    'editorLineNumber.activeForeground': '#d9a94f',
    'editor.lineHighlightBackground': '#221d17',
    'editor.selectionBackground': '#5a4622',
    'editorCursor.foreground': '#f6d98a',
    'editorWidget.background': '#241f19',
    'editorWidget.border': '#5b4a2a',
    'editorHoverWidget.background': '#241f19',
    'editorHoverWidget.border': '#5b4a2a',
    'editorError.foreground': '#f0907c',
    'editorWarning.foreground': '#e6b65c',
    'scrollbarSlider.background': '#4a423680',
    focusBorder: '#d9a94f',
  },
};
