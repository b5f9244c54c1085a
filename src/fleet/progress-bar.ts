/** How far a run is. */
export interface Progress {
  readonly done: number
  readonly total: number
  /** Done without being worked out, from an interrupted run; not counted in the rate. */
  readonly recalled: number
  readonly seconds: number
}

/** `[########........]  512/1000  51 %  48.2/s  0:10 left` in at most `width` columns. */
export function progressBar({ done, total, recalled, seconds }: Progress, width: number): string {
  const rate = seconds > 0 ? (done - recalled) / seconds : 0
  const left = rate > 0 ? (total - done) / rate : undefined
  const share = total === 0 ? 1 : done / total
  const words = [
    `${String(done).padStart(String(total).length)}/${total}`,
    `${String(Math.floor(share * 100)).padStart(3)} %`,
    ...(rate > 0 ? [`${rate.toFixed(1)}/s`] : []),
    ...(left === undefined || done === total ? [] : [`${clock(left)} left`]),
  ].join('  ')
  const room = Math.min(30, width - words.length - 5)
  if (room < 5) return words.slice(0, Math.max(0, width - 1))
  const filled = Math.round(share * room)
  return `[${'#'.repeat(filled)}${'.'.repeat(room - filled)}]  ${words}`
}

function clock(seconds: number): string {
  const whole = Math.ceil(seconds)
  const minutes = Math.floor(whole / 60) % 60
  const hours = Math.floor(whole / 3600)
  const two = (value: number): string => String(value).padStart(2, '0')
  return hours > 0 ? `${hours}:${two(minutes)}:${two(whole % 60)}` : `${minutes}:${two(whole % 60)}`
}
