/** A chart as a picture, and its figures as a table for those who want or need them. */
import { useWords } from '../session/session.ts';

interface Props {
  readonly svg: string;
  readonly title: string;
  readonly heads: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

export function Chart({ svg, title, heads, rows }: Props) {
  const { charts } = useWords();
  return (
    <figure className="chart">
      <img src={`data:image/svg+xml;utf8,${encodeURIComponent(svg)}`} alt={title} />
      <details>
        <summary>{charts.figures}</summary>
        <table>
          <caption className="spoken-only">{title}</caption>
          <thead>
            <tr>
              {heads.map((head) => (
                <th key={head} scope="col">
                  {head}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map((row) => (
              <tr key={row.join('|')}>
                {row.map((cell, i) => (
                  <td key={heads[i]}>{cell}</td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </details>
    </figure>
  );
}
