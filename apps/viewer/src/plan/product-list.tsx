/** The products a person may use, with the mode-of-action group each label states, and the one meant to be used. */
import type { PlanSettings, Product } from '@crownfall/survey';
import { changePlan } from '../session/planning.ts';
import { useSession } from '../session/session.ts';
import { Choice } from '../shell/choice.tsx';
import { TextEntry } from './text-entry.tsx';
import { usePlanWords } from './use-plan-words.ts';

export function ProductList({ settings: { products, product } }: { readonly settings: PlanSettings }) {
  const session = useSession();
  const words = usePlanWords();
  const set = (at: number, part: Partial<Product>): void => {
    const row: Product = { ...(products[at] ?? { name: '', group: '' }), ...part };
    const kept = products.toSpliced(at, 1, row).filter(({ name, group }) => name !== '' || group !== '');
    changePlan(session, { products: kept });
  };
  return (
    <div className="products">
      {[...products, { name: '', group: '' }].map(({ name, group }, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a row is its place; names change while they are typed
        <div className="sizes" key={i}>
          <TextEntry label={words.product(i + 1)} value={name} change={(text) => set(i, { name: text })} />
          <TextEntry label={words.group(i + 1)} value={group} change={(text) => set(i, { group: text })} />
        </div>
      ))}
      <Choice
        label={words.productMeant}
        value={product}
        choices={[['', words.noProduct], ...products.map(({ name }) => [name, name] as const)]}
        choose={(name) => changePlan(session, { product: name })}
      />
    </div>
  );
}
