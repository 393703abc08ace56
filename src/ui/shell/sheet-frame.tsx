import type { ReactNode } from 'react'
import { PhoneFoot } from './phone-foot.tsx'
import { TitleBlock } from './title-block.tsx'
import { PHONE, useMedia } from './use-media.ts'

/** Frame and centring marks, in the habit of ISO 5457. */
export const Frame = () => (
  <div className="frame" aria-hidden="true">
    <span className="centring top" />
    <span className="centring bottom" />
    <span className="centring left" />
    <span className="centring right" />
  </div>
)

/** A sheet with one thing on it, and the title block at its lower right unless it is bare. */
export const SheetFrame = ({ children, bare }: { children: ReactNode; bare: boolean }) => {
  const phone = useMedia(PHONE)
  return (
    <div className="sheet whole">
      <Frame />
      <main className="whole-body">{children}</main>
      {bare ? null : phone ? (
        <PhoneFoot />
      ) : (
        <footer className="whole-foot">
          <TitleBlock brief />
        </footer>
      )}
    </div>
  )
}
