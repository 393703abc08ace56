import { cautionsOf, type Figure, type Plant, seasonSource, seasonText } from '../../catalogue/index.ts'

const range = (figure: Figure | null, unit: string): string =>
  figure ? `${figure.value} ${unit} (${figure.range[0]}–${figure.range[1]})` : 'not known'
const from = (known: { standing: string; source: string } | null): string =>
  known === null ? '' : known.standing === 'source' ? known.source : known.standing

/** What the catalogue knows of a plant, each line with where it is from; what is missing is said to be not known. */
export const PlantFacts = ({ plant }: { plant: Plant }) => {
  const figures: [string, Figure | null, string][] = [
    ['Head, open', plant.headOpen_mm, 'mm'],
    ['Head, closed', plant.headClosed_mm, 'mm'],
    ['Stem', plant.stem_mm, 'mm'],
    [plant.manyHeaded ? 'Side stems to cut' : 'Blooms on a stem', plant.bloomsPerStem, ''],
    ['In a bunch', plant.bunch, 'stems'],
  ]
  return (
    <details className="cautions">
      <summary>
        <b>Sizes, care and cautions</b> of {plant.name.toLowerCase()}, with their sources
      </summary>
      <dl>
        {figures.map(([name, figure, unit]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>
              {range(figure, unit)} <span className="dim">({from(figure) || 'no figure was found'})</span>
            </dd>
          </div>
        ))}
        <div>
          <dt>When</dt>
          <dd>
            {seasonText(plant.id, 'north') ?? 'not known'}{' '}
            <span className="dim">
              (months of the north{'; '}
              {seasonSource(plant.id, 'north')})
            </span>
          </dd>
        </div>
        {plant.care.map((c) => (
          <div key={c.label}>
            <dt>{c.label}</dt>
            <dd>
              {c.text} <span className="dim">({from(c)})</span>
            </dd>
          </div>
        ))}
        <div>
          <dt>Take care</dt>
          {cautionsOf(plant.id).map((c) => (
            <dd key={c.about + c.text}>
              {c.text} <span className="dim">({from(c)})</span>
            </dd>
          ))}
        </div>
      </dl>
    </details>
  )
}
