// The text of a file, with what was found at its lines.
import { defaultKeymap, history, historyKeymap } from '@codemirror/commands';
import { yaml } from '@codemirror/lang-yaml';
import { HighlightStyle, indentUnit, syntaxHighlighting } from '@codemirror/language';
import { lintGutter, lintKeymap, setDiagnostics } from '@codemirror/lint';
import { highlightSelectionMatches, searchKeymap } from '@codemirror/search';
import { EditorState } from '@codemirror/state';
import { drawSelection, EditorView, highlightActiveLine, keymap, lineNumbers } from '@codemirror/view';
import { tags } from '@lezer/highlight';

const severity = { fail: 'error', error: 'error', unknown: 'warning', warn: 'warning', waived: 'info' };

const colours = HighlightStyle.define([
  { tag: [tags.propertyName, tags.definition(tags.propertyName)], color: 'var(--key)' },
  { tag: tags.comment, color: 'var(--faint)' },
  { tag: [tags.string, tags.content], color: 'var(--ink)' },
]);

const look = EditorView.theme({
  '&': { height: '100%', color: 'var(--ink)', backgroundColor: 'var(--sheet)' },
  '.cm-scroller': { fontFamily: 'ui-monospace, monospace', fontSize: '0.86rem' },
  '.cm-gutters': { backgroundColor: 'var(--paper)', color: 'var(--faint)', borderRight: '1px solid var(--hair)' },
  '.cm-activeLine': { backgroundColor: 'var(--line)' },
  '.cm-cursor': { borderLeftColor: 'var(--ink)' },
  '&.cm-focused .cm-selectionBackground, .cm-selectionBackground': { backgroundColor: 'var(--marked) !important' },
  '.cm-tooltip': { backgroundColor: 'var(--sheet)', color: 'var(--ink)', border: '1px solid var(--faint)', maxWidth: '32rem' },
  '.cm-panels': { backgroundColor: 'var(--paper)', color: 'var(--ink)' },
});

export class Editor {
  /** `changed(text)` after typing, `atLine(line)` when the cursor comes to another line. */
  constructor(parent, { changed, atLine }) {
    this.states = new Map();
    this.changed = changed;
    this.extensions = [
      lineNumbers(), history(), drawSelection(), highlightActiveLine(), highlightSelectionMatches(), lintGutter(),
      yaml(), indentUnit.of('  '), syntaxHighlighting(colours), look,
      keymap.of([...defaultKeymap, ...historyKeymap, ...searchKeymap, ...lintKeymap]),
      EditorView.contentAttributes.of({ 'aria-label': 'Text of the chosen file', spellcheck: 'false', tabindex: '0' }),
      EditorView.updateListener.of((update) => {
        if (update.docChanged && !this.opening) changed(update.state.doc.toString());
        else if (update.selectionSet && !this.opening) atLine(update.state.doc.lineAt(update.state.selection.main.head).number);
      }),
    ];
    // Its styles may stand in a root of their own, which the page's policy leaves alone.
    const root = parent.attachShadow({ mode: 'open' });
    this.view = new EditorView({ parent: root, root });
  }

  /** Forgets all files: another project comes. */
  forget() {
    this.states.clear();
    this.path = '';
  }

  open(path, text, readOnly = false) {
    if (this.path) this.states.set(this.path, this.view.state);
    const kept = this.states.get(path);
    this.opening = true;
    this.view.setState(kept && kept.doc.toString() === text ? kept : EditorState.create({
      doc: text, extensions: [...this.extensions, EditorState.readOnly.of(readOnly)],
    }));
    this.opening = false;
    this.path = path;
  }

  /** Marks the findings that stand in the open file. */
  mark(findings) {
    const { doc } = this.view.state;
    const marks = findings.filter(({ location }) => location.file === this.path && location.line >= 1)
      .map((each) => {
        const line = doc.line(Math.min(each.location.line, doc.lines));
        const from = Math.min(line.from + Math.max(0, each.location.column - 1), line.to);
        return { from, to: line.to, severity: severity[each.verdict],
          message: [each.verdict, each.rule, each.route, each.message].filter(Boolean).join(': ') +
            (each.mend ? `\nmend: ${each.mend}` : '') };
      }).sort((a, b) => a.from - b.from);
    this.view.dispatch(setDiagnostics(this.view.state, marks));
  }

  goTo(line, focus) {
    const { doc } = this.view.state;
    const { from } = doc.line(Math.max(1, Math.min(line, doc.lines)));
    this.opening = true;
    this.view.dispatch({ selection: { anchor: from }, effects: EditorView.scrollIntoView(from, { y: 'center' }) });
    this.opening = false;
    if (focus) this.view.focus();
  }
}
