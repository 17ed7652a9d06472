/* stead-limit-card-paper.c - a poster for the kitchen's wall: its own foods and their limits,
 * in large type, in one language or in two.
 */
#include "config.h"

#include "answer/stead-language.h"
#include "answer/stead-limit-card-answer.h"
#include "paper/stead-paper-private.h"

#include <math.h>
#include <pango/pangocairo.h>

/* Tabloid, 11 × 17 in; A3 on a metric farm: points. */
#define TABLOID_WIDTH 792
#define TABLOID_HEIGHT 1224
#define A3_WIDTH 841.89
#define A3_HEIGHT 1190.55

#define MARGIN 48.0
#define TITLE_SIZE 44.0
#define LIMIT_MOST 40.0
#define LIMIT_LEAST 14.0
#define WORK_SHARE 0.75      /* size of the left column's letters beside those of the limits */

typedef struct
{
  SteadLimitCardAnswer *answer;
  char                 *title, *caution;
  double                width, height;
} Card;

static void
card_free (gpointer data)
{
  Card *card = data;

  stead_limit_card_answer_free (card->answer);
  g_free (card->title);
  g_free (card->caution);
  g_free (card);
}

/* @texts: of char * */
static char *
join (const GPtrArray *texts,
      const char      *between)
{
  g_autoptr(GString) text = g_string_new (NULL);

  for (guint i = 0; i < texts->len; i++)
    g_string_append_printf (text, "%s%s", i > 0 ? between : "", (const char *) texts->pdata[i]);
  return g_strdup (text->str);
}

static Card *
card_new (SteadStore          *store,
          const char * const  *languages,
          GError             **error)
{
  SteadLimitCardAnswer *answer = stead_limit_card_answer_new (store, languages, error);
  Card *card;

  if (answer == NULL)
    return NULL;
  card = g_new0 (Card, 1);
  card->answer = answer;
  card->title = join (answer->titles, " · ");
  card->caution = join (answer->cautions, "\n");
  card->width = answer->units == STEAD_UNITS_METRIC ? A3_WIDTH : TABLOID_WIDTH;
  card->height = answer->units == STEAD_UNITS_METRIC ? A3_HEIGHT : TABLOID_HEIGHT;
  return card;
}

/* --- the poster ------------------------------------------------------------------------------ */

/* A figure and its degrees stay in one line. */
static char *
bind_degrees (const char *text)
{
  g_auto(GStrv) parts = g_strsplit (text, " °", -1);

  return g_strjoinv ("\302\240°", parts);
}

static PangoLayout *
lay_text (cairo_t    *cr,
          const char *text,
          double      size,
          gboolean    bold)
{
  PangoLayout *layout = pango_cairo_create_layout (cr);
  PangoFontDescription *font = pango_font_description_from_string ("Sans");
  g_autofree char *bound = bind_degrees (text);

  pango_font_description_set_absolute_size (font, size * PANGO_SCALE);
  pango_font_description_set_weight (font, bold ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);
  pango_layout_set_font_description (layout, font);
  pango_font_description_free (font);
  pango_layout_set_text (layout, bound, -1);
  return layout;
}

/* Draws, or (with @paint unset) only measures. Returns: the height */
static double
put_text (cairo_t    *cr,
          const char *text,
          double      size,
          gboolean    bold,
          double      x,
          double      y,
          double      width,
          gboolean    paint)
{
  g_autoptr(PangoLayout) layout = lay_text (cr, text, size, bold);
  int height;

  pango_layout_set_width (layout, (int) (width * PANGO_SCALE));
  pango_layout_set_wrap (layout, PANGO_WRAP_WORD_CHAR);
  pango_layout_get_size (layout, NULL, &height);
  if (paint)
    {
      cairo_move_to (cr, x, y);
      pango_cairo_show_layout (cr, layout);
    }
  return (double) height / PANGO_SCALE;
}

/* One under the other; all but the first lighter.  Returns: the height */
static double
put_texts (cairo_t         *cr,
           const GPtrArray *texts,
           double           size,
           double           x,
           double           y,
           double           width,
           gboolean         paint)
{
  double at = y;

  for (guint i = 0; i < texts->len; i++)
    at += put_text (cr, texts->pdata[i], size, i == 0, x, at, width, paint);
  return at - y;
}

/* What is done stands left of its limits, in a column that its longest word fits into. */
static double
left_width (cairo_t    *cr,
            const Card *card,
            double      size)
{
  double all = card->width - 2 * MARGIN;
  double widest = 0;

  for (guint i = 0; i < card->answer->entries->len; i++)
    {
      const SteadLimitCardEntry *entry = card->answer->entries->pdata[i];

      for (guint j = 0; j < entry->works->len; j++)
        {
          g_autoptr(PangoLayout) layout = lay_text (cr, entry->works->pdata[j], size * WORK_SHARE, TRUE);
          int width;

          /* A line for each word. */
          pango_layout_set_width (layout, 0);
          pango_layout_set_wrap (layout, PANGO_WRAP_WORD);
          pango_layout_get_size (layout, &width, NULL);
          widest = MAX (widest, (double) width / PANGO_SCALE);
        }
    }
  return CLAMP (ceil (widest) + 1, all * 0.27, all * 0.4);
}

static double
put_entry (cairo_t                   *cr,
           const Card                *card,
           const SteadLimitCardEntry *entry,
           double                     size,
           double                     left,
           double                     y,
           gboolean                   paint)
{
  double x = MARGIN + left + 16;
  double width = card->width - MARGIN - x;
  double work = put_texts (cr, entry->works, size * WORK_SHARE, MARGIN, y, left, paint);
  g_autofree char *foods = join (entry->foods, ", ");
  double at = y;

  at += put_texts (cr, entry->limits, size, x, at, width, paint);
  if (*foods != '\0')
    at += put_text (cr, foods, size * 0.55, FALSE, x, at, width, paint);
  at += put_text (cr, entry->source, MAX (8, size * 0.28), FALSE, x, at, width, paint);
  at = MAX (at, y + work) + size * 0.35;
  if (paint)
    {
      cairo_move_to (cr, MARGIN, at - size * 0.17);
      cairo_line_to (cr, card->width - MARGIN, at - size * 0.17);
      cairo_set_line_width (cr, 0.8);
      cairo_stroke (cr);
    }
  return at;
}

static double
put_all (cairo_t    *cr,
         const Card *card,
         double      size,
         gboolean    paint)
{
  double left = left_width (cr, card, size);
  double y = MARGIN;

  y += put_text (cr, card->title, TITLE_SIZE, TRUE, MARGIN, y, card->width - 2 * MARGIN, paint) + 14;
  for (guint i = 0; i < card->answer->entries->len; i++)
    y = put_entry (cr, card, card->answer->entries->pdata[i], size, left, y, paint);
  return y + put_text (cr, card->caution, 13, FALSE, MARGIN, y + 6, card->width - 2 * MARGIN, paint) + 6;
}

/* As large as all of it fits. */
static void
card_paint (cairo_t *cr,
            int      page,
            gpointer data)
{
  const Card *card = data;
  double size = LIMIT_MOST;

  while (size > LIMIT_LEAST && put_all (cr, card, size, FALSE) > card->height - MARGIN)
    size -= 0.5;
  cairo_set_source_rgb (cr, 0, 0, 0);
  put_all (cr, card, size, TRUE);
}

/* The head of the PDF is in the first of the languages. */
static SteadPages *
card_pages (SteadStore          *store,
            const char * const  *languages,
            GError             **error)
{
  g_autoptr(SteadImprint) imprint = stead_imprint_new (store, error);
  Card *card = imprint != NULL ? card_new (store, languages, error) : NULL;
  SteadPages *pages;
  char *former;

  if (card == NULL)
    return NULL;
  former = stead_language_enter (languages[0]);
  pages = stead_pages_new (imprint, card->title, NULL);
  stead_language_leave (former);
  stead_pages_set_sheet (pages, card->width, card->height, 1, card_paint, card, card_free);
  return pages;
}

SteadPages *
stead_limit_card_paper_new (SteadStore               *store,
                            const char               *of,
                            const SteadPaperOptions  *options,
                            GError                  **error)
{
  static const char * const english_first[] = { "en", "es", NULL }, * const spanish_first[] = { "es", "en", NULL };

  return card_pages (store, g_str_has_prefix (stead_imprint_language (), "es") ? spanish_first : english_first, error);
}

SteadPages *
stead_limit_card_paper_new_english (SteadStore               *store,
                                    const char               *of,
                                    const SteadPaperOptions  *options,
                                    GError                  **error)
{
  return card_pages (store, (const char *[]) { "en", NULL }, error);
}

SteadPages *
stead_limit_card_paper_new_spanish (SteadStore               *store,
                                    const char               *of,
                                    const SteadPaperOptions  *options,
                                    GError                  **error)
{
  return card_pages (store, (const char *[]) { "es", NULL }, error);
}
