/* stead-limit-card-paper.c - a poster for the kitchen's wall: its own foods and their limits, in large type. */
#include "config.h"

#include "answer/stead-check-list.h"
#include "paper/stead-paper-private.h"

#include <glib/gi18n-lib.h>
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

typedef struct
{
  char *work;      /* "Cook" */
  char *limit;     /* "at least 155 °F for 17 seconds" */
  char *foods;     /* "Breakfast bowls, Quiche" */
  char *source;
} Entry;

typedef struct
{
  GPtrArray *entries;
  char      *title, *caution;
  double     width, height;
} Card;

static void
entry_free (gpointer data)
{
  Entry *entry = data;

  g_free (entry->work);
  g_free (entry->limit);
  g_free (entry->foods);
  g_free (entry->source);
  g_free (entry);
}

static void
card_free (gpointer data)
{
  Card *card = data;

  g_ptr_array_unref (card->entries);
  g_free (card->title);
  g_free (card->caution);
  g_free (card);
}

/* --- what stands on it ------------------------------------------------------------------- */

/* Only what a thermometer or a clock shows at the stove, at the counter and in the cooler. */
static const char *
work_of (SteadCheckLineKind kind)
{
  switch ((int) kind)
    {
    case STEAD_CHECK_LINE_RECEIVE_COLD: return C_("limit card", "Take in cold");
    case STEAD_CHECK_LINE_EGGS_COLD: return C_("limit card", "Keep eggs cold");
    case STEAD_CHECK_LINE_COOK: return C_("limit card", "Cook");
    case STEAD_CHECK_LINE_COOL: return C_("limit card", "Cool");
    case STEAD_CHECK_LINE_REHEAT: return C_("limit card", "Reheat");
    case STEAD_CHECK_LINE_HOLD_HOT: return C_("limit card", "Keep hot");
    case STEAD_CHECK_LINE_HOLD_COLD: return C_("limit card", "Keep cold");
    case STEAD_CHECK_LINE_TIME_END: return C_("limit card", "By the clock");
    case STEAD_CHECK_LINE_JAR_PH: return C_("limit card", "Jars");
    default: return NULL;
    }
}

static void
add_entry (Card                 *card,
           const char           *work,
           const SteadCheckSaid *said)
{
  const char *limit = said->limit != NULL ? said->limit : said->text;
  Entry *entry;

  for (guint i = 0; i < card->entries->len; i++)
    {
      g_autofree char *foods = NULL;

      entry = card->entries->pdata[i];
      if (!g_str_equal (entry->work, work) || !g_str_equal (entry->limit, limit))
        continue;
      if (said->food == NULL || g_strrstr (entry->foods, said->food) != NULL)
        return;
      foods = g_steal_pointer (&entry->foods);
      entry->foods = *foods != '\0' ? g_strdup_printf ("%s, %s", foods, said->food) : g_strdup (said->food);
      return;
    }
  entry = g_new0 (Entry, 1);
  entry->work = g_strdup (work);
  entry->limit = g_strdup (limit);
  entry->foods = g_strdup (said->food != NULL ? said->food : "");
  entry->source = g_strdup (said->source);
  g_ptr_array_add (card->entries, entry);
}

static Card *
card_new (SteadStore  *store,
          GError     **error)
{
  g_autofree char *foods = stead_check_own_foods (store, error);
  g_autoptr(GPtrArray) limits = foods != NULL
                                ? stead_local_limit_repo_list (store, stead_store_get_today (store), error) : NULL;
  g_autoptr(GArray) local = NULL;
  SteadCheckOrder order = { .kind = STEAD_CHECK_ORDER_MENU, .text = foods, .day = STEAD_DAY_NONE };
  g_autoptr(SteadCheckPlanAnswer) plan = NULL;
  Card *card;

  if (limits == NULL)
    return NULL;
  local = stead_check_local_rows (limits);
  order.local = (const SteadLimitLocal *) (void *) local->data;
  order.n_local = local->len;
  plan = stead_check_plan_answer_new (store, &order, error);
  if (plan == NULL)
    return NULL;
  card = g_new0 (Card, 1);
  card->entries = g_ptr_array_new_with_free_func (entry_free);
  card->title = g_strdup (_("Our limits"));
  card->caution = g_strdup (plan->caution);
  card->width = plan->farm->units == STEAD_UNITS_METRIC ? A3_WIDTH : TABLOID_WIDTH;
  card->height = plan->farm->units == STEAD_UNITS_METRIC ? A3_HEIGHT : TABLOID_HEIGHT;
  for (guint i = 0; i < plan->lines->len; i++)
    {
      const SteadCheckSaid *said = plan->lines->pdata[i];
      const char *work = work_of (said->line->kind);

      if (work != NULL)
        add_entry (card, work, said);
    }
  return card;
}

/* --- the poster ------------------------------------------------------------------------------ */

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
  g_autoptr(PangoLayout) layout = pango_cairo_create_layout (cr);
  PangoFontDescription *font = pango_font_description_from_string ("Sans");
  int height;

  pango_font_description_set_absolute_size (font, size * PANGO_SCALE);
  pango_font_description_set_weight (font, bold ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);
  pango_layout_set_font_description (layout, font);
  pango_font_description_free (font);
  pango_layout_set_width (layout, (int) (width * PANGO_SCALE));
  pango_layout_set_wrap (layout, PANGO_WRAP_WORD_CHAR);
  pango_layout_set_text (layout, text, -1);
  pango_layout_get_size (layout, NULL, &height);
  if (paint)
    {
      cairo_move_to (cr, x, y);
      pango_cairo_show_layout (cr, layout);
    }
  return (double) height / PANGO_SCALE;
}

static double
put_entry (cairo_t     *cr,
           const Card  *card,
           const Entry *entry,
           double       size,
           double       y,
           gboolean     paint)
{
  double left = (card->width - 2 * MARGIN) * 0.27;
  double x = MARGIN + left + 16;
  double width = card->width - MARGIN - x;
  double work = put_text (cr, entry->work, size * 0.75, TRUE, MARGIN, y, left, paint);
  double at = y;

  at += put_text (cr, entry->limit, size, TRUE, x, at, width, paint);
  if (*entry->foods != '\0')
    at += put_text (cr, entry->foods, size * 0.55, FALSE, x, at, width, paint);
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
  double y = MARGIN;

  y += put_text (cr, card->title, TITLE_SIZE, TRUE, MARGIN, y, card->width - 2 * MARGIN, paint) + 14;
  for (guint i = 0; i < card->entries->len; i++)
    y = put_entry (cr, card, card->entries->pdata[i], size, y, paint);
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
    size -= 1;
  cairo_set_source_rgb (cr, 0, 0, 0);
  put_all (cr, card, size, TRUE);
}

SteadPages *
stead_limit_card_paper_new (SteadStore               *store,
                            const char               *of,
                            const SteadPaperOptions  *options,
                            GError                  **error)
{
  g_autoptr(SteadImprint) imprint = stead_imprint_new (store, error);
  Card *card = imprint != NULL ? card_new (store, error) : NULL;
  SteadPages *pages;

  if (card == NULL)
    return NULL;
  pages = stead_pages_new (imprint, card->title, NULL);
  stead_pages_set_sheet (pages, card->width, card->height, 1, card_paint, card, card_free);
  return pages;
}
