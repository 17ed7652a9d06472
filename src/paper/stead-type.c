/* stead-type.c - the types of text on paper: size, weight, colour.
 *
 * Measured without hinting and in points, so that the text breaks alike on the
 * screen, on a printer and in a file.
 */
#include "config.h"

#include "paper/stead-pages-private.h"

#define FAMILY "Sans"
#define LINE_SPACING 1.12f

static const struct
{
  double    size;
  gboolean  bold;
  SteadRole role;
} types[] = {
  [STEAD_TYPE_TITLE] = { 19, TRUE, STEAD_ROLE_INK },
  [STEAD_TYPE_LEAD] = { 11.5, FALSE, STEAD_ROLE_INK },
  [STEAD_TYPE_HEADING] = { 12, TRUE, STEAD_ROLE_INK },
  [STEAD_TYPE_BODY] = { 9, FALSE, STEAD_ROLE_INK },
  [STEAD_TYPE_STRONG] = { 9, TRUE, STEAD_ROLE_INK },
  [STEAD_TYPE_WORKED] = { 9, FALSE, STEAD_ROLE_INK },
  [STEAD_TYPE_SMALL] = { 7.5, FALSE, STEAD_ROLE_SOFT },
  [STEAD_TYPE_CAUTION] = { 9, FALSE, STEAD_ROLE_INK },
  [STEAD_TYPE_CELL] = { 9, FALSE, STEAD_ROLE_INK },
  [STEAD_TYPE_CELL_SOFT] = { 9, FALSE, STEAD_ROLE_SOFT },
  [STEAD_TYPE_CELL_TOTAL] = { 9, TRUE, STEAD_ROLE_INK },
  [STEAD_TYPE_CELL_HEAD] = { 7.5, TRUE, STEAD_ROLE_SOFT },
  [STEAD_TYPE_FRAME] = { 7.5, FALSE, STEAD_ROLE_SOFT },
  [STEAD_TYPE_FRAME_STRONG] = { 8.5, TRUE, STEAD_ROLE_INK },
};

static PangoLayout *
type_layout (cairo_t    *cr,
             SteadType   type,
             const char *markup,
             double      max_width)
{
  PangoFontDescription *font = pango_font_description_new ();
  cairo_font_options_t *options = cairo_font_options_create ();
  PangoLayout *layout = pango_cairo_create_layout (cr);
  PangoContext *context = pango_layout_get_context (layout);
  PangoAttrList *attributes;

  cairo_font_options_set_hint_metrics (options, CAIRO_HINT_METRICS_OFF);
  cairo_font_options_set_hint_style (options, CAIRO_HINT_STYLE_NONE);
  pango_cairo_context_set_font_options (context, options);
  pango_context_set_round_glyph_positions (context, FALSE);
  cairo_font_options_destroy (options);
  pango_font_description_set_family_static (font, FAMILY);
  pango_font_description_set_absolute_size (font, types[type].size * PANGO_SCALE);
  pango_font_description_set_weight (font, types[type].bold ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);
  pango_layout_set_font_description (layout, font);
  pango_font_description_free (font);
  pango_layout_set_wrap (layout, PANGO_WRAP_WORD_CHAR);
  pango_layout_set_line_spacing (layout, LINE_SPACING);
  pango_layout_set_width (layout, max_width > 0 ? (int) (max_width * PANGO_SCALE) : -1);
  if (type == STEAD_TYPE_FRAME || type == STEAD_TYPE_FRAME_STRONG)
    pango_layout_set_ellipsize (layout, PANGO_ELLIPSIZE_END);   /* the frame is one line, whatever the names */
  pango_layout_set_markup (layout, markup, -1);
  attributes = pango_attr_list_copy (pango_layout_get_attributes (layout));
  if (attributes == NULL)
    attributes = pango_attr_list_new ();
  pango_attr_list_insert (attributes, pango_attr_font_features_new (STEAD_FONT_FEATURES));
  pango_layout_set_attributes (layout, attributes);
  pango_attr_list_unref (attributes);
  return layout;
}

void
stead_type_measure (cairo_t    *cr,
                    SteadType   type,
                    const char *markup,
                    double      max_width,
                    double     *width,
                    double     *height)
{
  g_autoptr(PangoLayout) layout = type_layout (cr, type, markup, max_width);
  PangoRectangle logical;

  pango_layout_get_extents (layout, NULL, &logical);
  *width = (double) logical.width / PANGO_SCALE;
  *height = (double) logical.height / PANGO_SCALE;
}

void
stead_type_paint (cairo_t    *cr,
                  SteadType   type,
                  const char *markup,
                  SteadAlign  align,
                  double      x,
                  double      y,
                  double      width)
{
  static const PangoAlignment aligns[] = { PANGO_ALIGN_LEFT, PANGO_ALIGN_CENTER, PANGO_ALIGN_RIGHT };
  g_autoptr(PangoLayout) layout = type_layout (cr, type, markup, width);

  /* Pango takes left for the side at which a paragraph begins: a name in Arabic stays in line
   * with the others of its column. */
  if (align != STEAD_ALIGN_CENTER && pango_layout_get_direction (layout, 0) == PANGO_DIRECTION_RTL)
    align = align == STEAD_ALIGN_LEFT ? STEAD_ALIGN_RIGHT : STEAD_ALIGN_LEFT;
  pango_layout_set_alignment (layout, aligns[align]);
  stead_palette_set_source (cr, STEAD_SCHEME_PRINT, types[type].role, 1);
  cairo_new_path (cr);
  cairo_move_to (cr, x, y);
  stead_text_show_layout (cr, layout);
  cairo_new_path (cr);
}
