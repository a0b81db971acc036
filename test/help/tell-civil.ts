/** A process that prints its machine's own zone and what core says of civil time: for tests under other zones and languages. */
import * as civil from '#core/time/civil.ts'

const day = civil.civilDay('2026-03-29', 'Europe/Berlin')
const cairo = civil.civilDay('2026-04-24', 'Africa/Cairo')
const late = Date.UTC(2026, 5, 21, 0, 4)
const christmas = Date.UTC(2026, 2, 19, 22, 37)
const told = {
  day: day.ok ? day.value : null,
  changes: day.ok ? civil.offsetChanges(day.value, 'Europe/Berlin') : null,
  cairo: cairo.ok ? cairo.value : null,
  apia: civil.civilDay('2011-12-30', 'Pacific/Apia').ok,
  gap: civil.instantOf('2026-03-29', 150, 'Europe/Berlin'),
  repeated: civil.instantOf('2026-10-25', 150, 'Europe/Berlin'),
  next: civil.addDays('2026-03-28', 1),
  weekday: civil.weekday('2026-03-29'),
  label: civil.formatDay('2026-03-29'),
  clock: civil.formatClock(late, 'UTC'),
  seconds: civil.formatClockSeconds(late, 'UTC'),
  kiritimati: civil.civilTime(christmas, 'Pacific/Kiritimati'),
  kiritimatiDay: civil.civilDayOf(christmas, 'Pacific/Kiritimati').date,
  offset: civil.formatOffset(christmas, 'Pacific/Kiritimati'),
  sea: civil.zoneName('Etc/GMT+2'),
}
const machine = { zone: Intl.DateTimeFormat().resolvedOptions().timeZone, behind: new Date(late).getTimezoneOffset() }
process.stdout.write(JSON.stringify({ machine, told }))
