/** What the tabs of this page tell each other: which job was written, and how far its counter is. */
export interface Written {
  id: string
  /** 0 where only the list of jobs has changed. */
  rev: number
}

const channel = typeof BroadcastChannel === 'undefined' ? undefined : new BroadcastChannel('stanchion')
let heard: (written: Written) => void = () => undefined

/** Tell the other tabs, and whoever listens in this one. */
export function tell(written: Written): void {
  channel?.postMessage(written)
  heard({ ...written, rev: 0 })
}

/** Called for what other tabs wrote; with rev 0 for what may change the list of jobs, here too. */
export function onWritten(act: (written: Written) => void): void {
  heard = act
  if (channel)
    channel.onmessage = ({ data }: MessageEvent<Partial<Written>>) => {
      if (typeof data?.id === 'string' && typeof data.rev === 'number') act(data as Written)
    }
}
