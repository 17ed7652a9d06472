/* stead-draw-text.c - text of the drawings, through Pango.
 *
 * Invariants:
 *  1. Each thread keeps at most N_KEPT laid-out texts and reuses the oldest one's
 *     layout, so that repainting for hours holds no more memory than the first
 *     minute did.
 *  2. Text is measured without hinting: the same text has the same size on the
 *     screen, in a picture and on paper, and a layout made with one context fits
 *     when it is painted with another.
 *  3. Figures are tabular everywhere.
 */
#include "config.h"

#include <string.h>

#include "draw/stead-draw.h"

#define N_KEPT 128

typedef struct
{
  PangoLayout *layout;
  char        *text;
  char        *family;
  double       size;
  double       max_width;
  gboolean     bold;
  guint        hash;
  guint64      used;
} Kept;

typedef struct
{
  PangoContext  *context;
  PangoAttrList *attributes;
  Kept           kept[N_KEPT];
  guint64        clock;
} TextCache;

static void
text_cache_free (gpointer data)
{
  TextCache *cache = data;

  for (int i = 0; i < N_KEPT; i++)
    {
      g_clear_object (&cache->kept[i].layout);
      g_free (cache->kept[i].text);
      g_free (cache->kept[i].family);
    }
  pango_attr_list_unref (cache->attributes);
  g_object_unref (cache->context);
  g_free (cache);
}

static GPrivate text_cache_key = G_PRIVATE_INIT (text_cache_free);

static TextCache *
text_cache_get (void)
{
  TextCache *cache = g_private_get (&text_cache_key);
  cairo_font_options_t *options;

  if (cache != NULL)
    return cache;
  cache = g_new0 (TextCache, 1);
  cache->context = pango_font_map_create_context (pango_cairo_font_map_get_default ());
  options = cairo_font_options_create ();
  cairo_font_options_set_hint_metrics (options, CAIRO_HINT_METRICS_OFF);
  cairo_font_options_set_hint_style (options, CAIRO_HINT_STYLE_NONE);
  cairo_font_options_set_antialias (options, CAIRO_ANTIALIAS_GRAY);
  pango_cairo_context_set_font_options (cache->context, options);
  cairo_font_options_destroy (options);
  pango_context_set_round_glyph_positions (cache->context, FALSE);
  cache->attributes = pango_attr_list_new ();
  pango_attr_list_insert (cache->attributes, pango_attr_font_features_new (STEAD_FONT_FEATURES));
  g_private_set (&text_cache_key, cache);
  return cache;
}

/* Gives the oldest place to a new text. */
static void
kept_fill (TextCache  *cache,
           Kept       *kept,
           const char *text,
           const char *family,
           double      size,
           gboolean    bold,
           double      max_width)
{
  PangoFontDescription *font = pango_font_description_new ();

  if (kept->layout == NULL)
    {
      kept->layout = pango_layout_new (cache->context);
      pango_layout_set_attributes (kept->layout, cache->attributes);
      pango_layout_set_wrap (kept->layout, PANGO_WRAP_WORD_CHAR);
    }
  pango_font_description_set_family (font, family);
  pango_font_description_set_weight (font, bold ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);
  pango_font_description_set_absolute_size (font, size * PANGO_SCALE);
  pango_layout_set_font_description (kept->layout, font);
  pango_font_description_free (font);
  pango_layout_set_width (kept->layout, max_width > 0 ? (int) (max_width * PANGO_SCALE) : -1);
  pango_layout_set_alignment (kept->layout, PANGO_ALIGN_LEFT);
  pango_layout_set_text (kept->layout, text, -1);
  g_free (kept->text);
  g_free (kept->family);
  kept->text = g_strdup (text);
  kept->family = g_strdup (family);
  kept->size = size;
  kept->bold = bold;
  kept->max_width = max_width;
  kept->hash = g_str_hash (text);
}

/* Returns: (transfer none): the text laid out for @cr; good until the next call */
static PangoLayout *
text_layout (cairo_t              *cr,
             const SteadDrawStyle *style,
             const char           *text,
             double                scale,
             gboolean              bold,
             double                max_width)
{
  TextCache *cache = text_cache_get ();
  const char *family = style->font_family != NULL ? style->font_family : "Sans";
  double size = style->font_size * scale;
  guint hash = g_str_hash (text);
  Kept *oldest = &cache->kept[0];

  pango_cairo_update_context (cr, cache->context);
  for (int i = 0; i < N_KEPT; i++)
    {
      Kept *kept = &cache->kept[i];

      if (kept->layout != NULL && kept->hash == hash && kept->bold == bold && kept->size == size
          && kept->max_width == max_width && g_str_equal (kept->text, text)
          && g_str_equal (kept->family, family))
        {
          kept->used = ++cache->clock;
          return kept->layout;
        }
      if (kept->used < oldest->used)
        oldest = kept;
    }
  kept_fill (cache, oldest, text, family, size, bold, max_width);
  oldest->used = ++cache->clock;
  return oldest->layout;
}

void
stead_text_measure_block (cairo_t              *cr,
                          const SteadDrawStyle *style,
                          const char           *text,
                          double                scale,
                          gboolean              bold,
                          double                max_width,
                          double               *width,
                          double               *height)
{
  PangoRectangle logical;

  g_return_if_fail (text != NULL);
  pango_layout_get_extents (text_layout (cr, style, text, scale, bold, max_width), NULL, &logical);
  *width = (double) logical.width / PANGO_SCALE;
  *height = (double) logical.height / PANGO_SCALE;
}

void
stead_text_measure (cairo_t              *cr,
                    const SteadDrawStyle *style,
                    const char           *text,
                    double                scale,
                    gboolean              bold,
                    double               *width,
                    double               *height)
{
  stead_text_measure_block (cr, style, text, scale, bold, 0, width, height);
}

/* Shows bytes of a layout's text as a line of its own.  Pango drops the space at
 * which it breaks a line, and cairo then notes it in a marked span within the tagged
 * text, after which some readers of PDF lose the rest; alone, the line keeps it. */
static void
show_line (cairo_t     *cr,
           PangoLayout *whole,
           int          start,
           int          length)
{
  const char *text = pango_layout_get_text (whole);
  PangoAttrList *attributes = pango_attr_list_copy (pango_layout_get_attributes (whole));
  g_autoptr(PangoLayout) layout = pango_layout_copy (whole);
  int total = (int) strlen (text);

  pango_attr_list_update (attributes, start + length, total - start - length, 0);
  pango_attr_list_update (attributes, 0, start, 0);
  pango_layout_set_width (layout, -1);
  pango_layout_set_attributes (layout, attributes);
  pango_layout_set_text (layout, text + start, length);
  pango_attr_list_unref (attributes);
  pango_cairo_show_layout_line (cr, pango_layout_get_line_readonly (layout, 0));
}

void
stead_text_show_layout (cairo_t     *cr,
                        PangoLayout *layout)
{
  const char *text = pango_layout_get_text (layout);
  PangoLayoutIter *lines;
  double x, y;

  if (pango_layout_get_line_count (layout) == 1)
    {
      pango_cairo_show_layout (cr, layout);
      return;
    }
  cairo_get_current_point (cr, &x, &y);
  lines = pango_layout_get_iter (layout);
  do
    {
      const PangoLayoutLine *line = pango_layout_iter_get_line_readonly (lines);
      PangoRectangle logical;

      if (line->length == 0)
        continue;
      pango_layout_iter_get_line_extents (lines, NULL, &logical);
      cairo_move_to (cr, x + (double) logical.x / PANGO_SCALE,
                     y + (double) pango_layout_iter_get_baseline (lines) / PANGO_SCALE);
      show_line (cr, layout, line->start_index,
                 line->length + (text[line->start_index + line->length] == ' '));
    }
  while (pango_layout_iter_next_line (lines));
  pango_layout_iter_free (lines);
}

SteadBox
stead_text_paint_block (cairo_t              *cr,
                        const SteadDrawStyle *style,
                        SteadRole             role,
                        const char           *text,
                        double                scale,
                        gboolean              bold,
                        SteadAlign            align,
                        double                max_width,
                        double                x,
                        double                y)
{
  static const double shares[] = { [STEAD_ALIGN_LEFT] = 0, [STEAD_ALIGN_CENTER] = 0.5, [STEAD_ALIGN_RIGHT] = 1 };
  static const PangoAlignment aligns[] = { PANGO_ALIGN_LEFT, PANGO_ALIGN_CENTER, PANGO_ALIGN_RIGHT };
  PangoLayout *layout;
  PangoRectangle logical;
  SteadBox box;

  g_return_val_if_fail (text != NULL, ((SteadBox) { x, y, 0, 0 }));
  layout = text_layout (cr, style, text, scale, bold, max_width);
  /* One line is not aligned to anything, and a change would have it shaped once more. */
  if (pango_layout_get_line_count (layout) > 1)
    pango_layout_set_alignment (layout, aligns[align]);
  pango_layout_get_extents (layout, NULL, &logical);
  box.width = (double) logical.width / PANGO_SCALE;
  box.height = (double) logical.height / PANGO_SCALE;
  box.x = x - shares[align] * box.width;
  box.y = y - box.height / 2;
  stead_palette_set_source (cr, style->scheme, role, 1);
  cairo_new_path (cr);
  cairo_move_to (cr, box.x - (double) logical.x / PANGO_SCALE, box.y);
  stead_text_show_layout (cr, layout);
  cairo_new_path (cr);
  return box;
}

void
stead_ground_clear (cairo_t              *cr,
                    const SteadDrawStyle *style,
                    const SteadBox       *box)
{
  cairo_rectangle (cr, box->x - 2, box->y, box->width + 4, box->height);
  stead_palette_set_source (cr, style->scheme, STEAD_ROLE_CARD, 1);
  cairo_fill (cr);
}

SteadBox
stead_text_paint (cairo_t              *cr,
                  const SteadDrawStyle *style,
                  SteadRole             role,
                  const char           *text,
                  double                scale,
                  gboolean              bold,
                  SteadAlign            align,
                  double                x,
                  double                y)
{
  return stead_text_paint_block (cr, style, role, text, scale, bold, align, 0, x, y);
}
