/**
 * Pictures of a flower spike at BBCH stages, drawn by rule: small bottle-shaped spikes as black olives bear them. Stages
 * from Meier (2001), BBCH Monograph, 2nd ed.; secondary digits from memory.
 */

/** From buds to fruit: 60–69 is flowering. */
export const BLOOM_STAGES = [51, 59, 61, 63, 65, 67, 69, 71] as const;
export type BloomStage = (typeof BLOOM_STAGES)[number];

/** Of 20 flowers along a spike: how many are still in bud, open, faded, and set to fruit. */
const SPIKES: Readonly<Record<BloomStage, readonly [bud: number, open: number, faded: number, fruit: number]>> = {
  51: [20, 0, 0, 0],
  59: [20, 0, 0, 0],
  61: [18, 2, 0, 0],
  63: [14, 6, 0, 0],
  65: [10, 10, 0, 0],
  67: [2, 4, 13, 1],
  69: [0, 0, 13, 7],
  71: [0, 0, 3, 17],
};

/** The spike opens from its foot upward. */
export function BloomPicture({ bbch }: { readonly bbch: BloomStage }) {
  const [bud, open, faded, fruit] = SPIKES[bbch];
  const kinds = [
    ...Array<Kind>(fruit).fill('fruit'),
    ...Array<Kind>(faded).fill('faded'),
    ...Array<Kind>(open).fill('open'),
    ...Array<Kind>(bud).fill(bbch === 51 ? 'closed' : 'bud'),
  ];
  return (
    <svg className="bloom-picture" viewBox="0 0 64 96" aria-hidden="true" focusable="false">
      <path className="stem" d="M32 94V10" />
      <path className="leaf" d="M32 90c-12 2-20-2-26-12 12-2 20 2 26 12zM32 92c12 2 20-2 26-12-12-2-20 2-26 12z" />
      {kinds.map((kind, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a flower is its place on the spike
        <Flower key={i} kind={kind} at={i} />
      ))}
    </svg>
  );
}

type Kind = 'closed' | 'bud' | 'open' | 'faded' | 'fruit';

/** Two rows of flowers, left and right in turn. */
function Flower({ kind, at }: { readonly kind: Kind; readonly at: number }) {
  const side = at % 2 === 0 ? -1 : 1;
  const y = 72 - Math.floor(at / 2) * 6.6 - (side > 0 ? 3.3 : 0);
  const x = 32 + side * 9;
  const stalk = <path className="stem thin" d={`M32 ${y + 3}L${x} ${y}`} />;
  if (kind === 'closed') return <circle className="bud" cx={32 + side * 3.5} cy={y} r={2} />;
  if (kind === 'bud')
    return (
      <>
        {stalk}
        <ellipse className="bud" cx={x} cy={y} rx={3.4} ry={3} />
        <circle className="petal" cx={x + side * 2.2} cy={y - 0.6} r={1.3} />
      </>
    );
  if (kind === 'fruit')
    return (
      <>
        {stalk}
        <ellipse className="fruit" cx={x} cy={y} rx={4.4} ry={3.2} />
      </>
    );
  if (kind === 'faded')
    return (
      <>
        {stalk}
        <path className="faded" d={`M${x} ${y}l${side * 4} 3M${x} ${y}l${side * 5} 0M${x} ${y}l${side * 2} 4.500`} />
      </>
    );
  const rays = [0, 72, 144, 216, 288].map((turn) => {
    const angle = (turn * Math.PI) / 180;
    return `M${x} ${y}l${(5 * Math.cos(angle)).toFixed(2)} ${(5 * Math.sin(angle)).toFixed(2)}`;
  });
  return (
    <>
      {stalk}
      <circle className="petal" cx={x} cy={y} r={4.6} />
      <path className="stamen" d={rays.join('')} />
    </>
  );
}
