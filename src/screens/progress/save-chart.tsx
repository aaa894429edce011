/** Hands a chart out as a picture (SVG or PNG, always on light paper) or as its rows (CSV). */
import { t } from '../../core/language.ts';
import { csvOf } from '../../core/progress/csv.ts';
import { useIntents } from '../app-context.tsx';
import { BYTE_ORDER_MARK, saveFile } from '../parts/save-file.ts';
import { pngOf, svgText } from './picture-file.ts';
import type { Sheet } from './sheets.ts';

interface SaveChartProps {
  readonly name: string;
  readonly sheet: Sheet;
  /** Draws it where it is not drawn yet. Left out where the table is the picture. */
  readonly picture?: () => SVGSVGElement | null;
}

export function SaveChart({ name, sheet, picture }: SaveChartProps) {
  const { after } = useIntents();
  const save = (ending: string, content: BlobPart, type: string) =>
    void saveFile({ name: `${name}.${ending}`, content, type }, after);
  const savePng = async (svg: SVGSVGElement) => {
    const png = await pngOf(svg);
    if (png) save('png', png, 'image/png');
  };
  const withPicture = (work: (svg: SVGSVGElement) => void) => () => {
    const svg = picture?.();
    if (svg) work(svg);
  };
  return (
    <div className="row" data-save>
      <span className="soft small">{t('Save as')}</span>
      {picture ? (
        <>
          <button type="button" onClick={withPicture((svg) => save('svg', svgText(svg), 'image/svg+xml'))}>
            SVG
          </button>
          <button type="button" onClick={withPicture((svg) => void savePng(svg))}>
            PNG
          </button>
        </>
      ) : null}
      <button type="button" onClick={() => save('csv', BYTE_ORDER_MARK + csvOf(sheet.head, sheet.rows), 'text/csv')}>
        CSV
      </button>
    </div>
  );
}
