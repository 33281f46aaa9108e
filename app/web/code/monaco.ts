/** The code editor, set up once. It is large, so the page loads this module only where code is shown. */
import * as monaco from 'monaco-editor/editor/editor.api';
import EditorWorker from 'monaco-editor/editor/editor.worker?worker';
import 'monaco-editor/features/bracketMatching/register';
import 'monaco-editor/features/clipboard/register';
import 'monaco-editor/features/codeEditor/register';
import 'monaco-editor/features/codicon/register';
import 'monaco-editor/features/comment/register';
import 'monaco-editor/features/find/register';
import 'monaco-editor/features/folding/register';
import 'monaco-editor/features/gotoError/register';
import 'monaco-editor/features/hover/register';
import 'monaco-editor/features/linesOperations/register';
import 'monaco-editor/features/toggleTabFocusMode/register';
import 'monaco-editor/languages/definitions/cpp/register';
import { patternConfiguration, patternGrammar, patternLanguage } from './glsl.ts';
import { benchTheme } from './theme.ts';

self.MonacoEnvironment = { getWorker: () => new EditorWorker() };

monaco.languages.register({ id: patternLanguage });
monaco.languages.setLanguageConfiguration(patternLanguage, patternConfiguration);
monaco.languages.setMonarchTokensProvider(patternLanguage, patternGrammar);
monaco.editor.defineTheme('bench', benchTheme);
monaco.editor.setTheme('bench');

export { monaco };
