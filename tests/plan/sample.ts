/** A plan with every key, in the words of the file format's description. */
export const RAFFLE = `title: Guild raffle quilt, outer border
units: in
paper: letter
foot: { clearance: 1/4 }
template: baluster
layout:
  border:
    width: 6
    inner: { top: 60 1/8, right: 72, bottom: 60, left: 72 1/4 }
    margin: 1/2
    from: inner
    corners: turn
swag:
  from: 1
  to: crown
  setting: crown-on-centre
  side: inside
  direction: heel-first
  repeats: auto
  gap: 0
channels: { outward: [1/4], inward: [1/4, 1/8] }
fills: { swag: feather, background: stipple, channels: [pearls] }
stitch: { length: 1/10 }
marks: { round: 1/16 }
`;
