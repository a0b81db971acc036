/** A QR code as one vector path; the content is a short geo address, so it always fits. */
import qrcode from 'qrcode-generator'

interface QrCodeProps {
  readonly text: string
  readonly label: string
}

/** Light modules around the code that scanners need (ISO/IEC 18004: four). */
const QUIET = 4

export function qrPath(text: string): { path: string; size: number } {
  const code = qrcode(0, 'M')
  code.addData(text, 'Byte')
  code.make()
  const count = code.getModuleCount()
  const path: string[] = []
  for (let row = 0; row < count; row++) {
    for (let column = 0; column < count; column++) {
      if (code.isDark(row, column)) path.push(`M${column + QUIET},${row + QUIET}h1v1h-1z`)
    }
  }
  return { path: path.join(''), size: count + 2 * QUIET }
}

export function QrCode({ text, label }: QrCodeProps) {
  const { path, size } = qrPath(text)
  return (
    <svg class="qr" viewBox={`0 0 ${size} ${size}`} role="img" aria-label={label} shape-rendering="crispEdges">
      <rect width={size} height={size} class="qr-light" />
      <path d={path} class="qr-dark" />
    </svg>
  )
}
