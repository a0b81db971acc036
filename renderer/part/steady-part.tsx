/** Parts that are drawn again only when something that they are given is another, by identity: most of the board rests while a hand moves one thing. */
import { Component, type ComponentChild } from 'preact'

/** The same part, kept as it stands for as long as it is given the same. It must read nothing but what it is given. */
export function steadyPart<Props extends object>(draw: (props: Props) => ComponentChild) {
  return class SteadyPart extends Component<Props> {
    override shouldComponentUpdate(next: Readonly<Props>): boolean {
      const names = Object.keys(next) as (keyof Props)[]
      return names.length !== Object.keys(this.props).length || names.some((name) => next[name] !== this.props[name])
    }

    override render(): ComponentChild {
      return draw(this.props)
    }
  }
}
