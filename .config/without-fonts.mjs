const STAND_IN = '\0measures-no-text'

/**
 * svgdom loads a font engine and an image reader for boxes of texts and pictures. Widths of labels come from our own tables
 * and a pattern has no pictures, so the command line goes without them; whoever asks for a box is told.
 */
export function withoutFonts() {
  return {
    name: 'without-fonts',
    resolveId: (source, importer) =>
      importer?.includes('/svgdom/') && (source === 'fontkit' || source === 'image-size') ? STAND_IN : undefined,
    load: (id) =>
      id === STAND_IN
        ? `const none = () => { throw new Error('texts and pictures are not measured here') }
           export const openSync = none
           export default none`
        : undefined,
  }
}
