import { Component, type ReactNode } from 'react'
import { textOfDesign } from '../../state/index.ts'
import { fileName } from '../../storage/index.ts'
import { download } from '../files/index.ts'
import { Button } from '../parts/index.ts'

const save = (): void => {
  const { text, title } = textOfDesign()
  download(new Blob([text], { type: 'application/json' }), fileName(title))
}

/** When the page breaks: the work is handed out as a file. A class, since React catches errors in no other way. */
export class LastResort extends Component<{ children: ReactNode }, { why: string }> {
  override state = { why: '' }
  static getDerivedStateFromError(error: unknown): { why: string } {
    return { why: error instanceof Error ? error.message : String(error) }
  }
  override render(): ReactNode {
    if (!this.state.why) return this.props.children
    return (
      <main className="last-resort">
        <h1>The page has stopped</h1>
        <p>Your design is still here as it was after the last step. Keep a copy, then load the page again.</p>
        <p className="quiet">What went wrong: {this.state.why}</p>
        <p className="last-resort-acts">
          <Button kind="main" onClick={save}>
            Download the design
          </Button>
          <Button onClick={() => location.reload()}>Load the page again</Button>
          <Button onClick={() => this.setState({ why: '' })}>Try to go on</Button>
        </p>
      </main>
    )
  }
}
