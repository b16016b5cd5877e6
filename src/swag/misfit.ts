/** Why a stretch of a template does not make a swag in a given place, and by how much it misses. */

export type Misfit =
  /** The half span is longer than the chord: the template does not reach. */
  | { readonly kind: 'too-short'; readonly by: number }
  /** Nothing is left of the length for a swag of this count, gap and corner; `by` is what each of them lacks. */
  | { readonly kind: 'no-length'; readonly by: number }
  /** The stitching bulges back past its start farther than the gap allows. */
  | { readonly kind: 'bulges'; readonly by: number; readonly bulge: number }
  /** It passes below the start line, into the margin or the seam. */
  | { readonly kind: 'dips'; readonly by: number }
  /** Round a centre: its crowns do not point the way that they should. */
  | { readonly kind: 'points-away'; readonly by: number; readonly wanted: 'outward' | 'inward' }
  /** It crosses its own centre line (or, at a corner, the mitre). */
  | { readonly kind: 'past-centre'; readonly by: number }
  /** It reaches, outward channels included, into the far margin. */
  | { readonly kind: 'too-deep'; readonly by: number }
  /** The start of the corner swag would lie beyond the corner. */
  | { readonly kind: 'beyond-corner'; readonly by: number }
  /** The two halves of the corner swag come within `neck` mm of each other, and `by` mm too near. */
  | { readonly kind: 'narrow-neck'; readonly by: number; readonly neck: number }
  /** The gap that would be left between neighbours is as wide as a swag. */
  | { readonly kind: 'too-wide-gap'; readonly by: number }
  /** A gap is asked for, and a wider one of `gap` mm would be left over. */
  | { readonly kind: 'gap-left'; readonly by: number; readonly gap: number }
  /** It sets out beside its neighbour's and keeps so close to it for `along` mm that the two are one thick line. */
  | { readonly kind: 'doubled'; readonly by: number; readonly along: number }
  /** It comes nearer to the row before it than the rows are to keep apart. */
  | { readonly kind: 'rows-near'; readonly by: number }
  /** Round a motif: the frame's inner circle is smaller than what is kept clear, at the radius. */
  | { readonly kind: 'motif-too-large'; readonly by: number }
  /** The frame keeps farther off the motif than it should, at the radius, however steeply its swags are laid. */
  | { readonly kind: 'stands-off'; readonly by: number }
  /** It reaches, outward channels included, beyond the frame's limit, at the radius. */
  | { readonly kind: 'too-wide'; readonly by: number };

/** Lengths nearer than this (mm) are equal in a fit: rounding of a chain of closed forms. */
export const FIT_NOISE = 1e-7;

export type Result<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly misfit: Misfit };

export const fits = <T>(value: T): Result<T> => ({ ok: true, value });
export const misses = (misfit: Misfit): Result<never> => ({ ok: false, misfit });
