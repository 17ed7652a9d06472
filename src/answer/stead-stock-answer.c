/* stead-stock-answer.c - "What is in the store room, and what will run out?" */
#include "config.h"

#include "answer/stead-stock-answer.h"
#include "answer/stead-flock-private.h"
#include "answer/stead-words-private.h"
#include "core/stead-money.h"
#include "store/stead-farm-repo.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Say so when something lasts less than this (common practice, no source). */
#define LOW_DAYS 7.0

void
stead_stock_line_free (SteadStockLine *line)
{
  if (line == NULL)
    return;
  stead_item_free (line->item);
  g_free (line->on_hand);
  g_free (line->lasts);
  g_free (line);
}

void
stead_stock_answer_free (SteadStockAnswer *self)
{
  if (self == NULL)
    return;
  g_clear_pointer (&self->lines, g_ptr_array_unref);
  g_free (self->sentence);
  g_free (self);
}

/* An item never bought is not low unless a mark was set for it, nor is what the farm makes
 * itself: it is made to go. */
static gboolean
is_low (const SteadStockLine *line)
{
  if (isfinite (line->item->reorder_base) && line->stock.on_hand_base < line->item->reorder_base)
    return TRUE;
  return line->item->kind != STEAD_ITEM_PRODUCE && isfinite (line->days) && line->days < LOW_DAYS;
}

static char *
lasts_text (const SteadStockLine *line)
{
  if (!isfinite (line->days))
    return g_strdup (line->stock.on_hand_base > 0 ? _("not used lately") : _("none on hand"));
  if (line->days < 1)
    return g_strdup (_("less than a day"));
  if (line->days > 365)
    return g_strdup (_("more than a year"));
  return stead_words_days ((gint64) floor (line->days + 1e-9));
}

/* Takes @item over. */
static SteadStockLine *
read_line (SteadStore  *store,
           SteadItem   *item,
           SteadDay     today,
           GError     **error)
{
  SteadStockLine *line = g_new0 (SteadStockLine, 1);

  line->item = item;
  if (!stead_lot_repo_stock (store, item->id, today, STEAD_USE_DAYS, &line->stock, error))
    {
      stead_stock_line_free (line);
      return NULL;
    }
  line->days = line->stock.use_per_day_base > 0 ? line->stock.on_hand_base / line->stock.use_per_day_base : NAN;
  line->low = is_low (line);
  line->on_hand = stead_quantity_format (line->stock.on_hand_base, item->unit);
  line->lasts = lasts_text (line);
  return line;
}

static int
compare_lines (gconstpointer a,
               gconstpointer b)
{
  const SteadStockLine *x = *(SteadStockLine * const *) a;
  const SteadStockLine *y = *(SteadStockLine * const *) b;

  return x->item->kind != y->item->kind ? (int) x->item->kind - (int) y->item->kind
                                        : g_utf8_collate (x->item->name, y->item->name);
}

static char *
low_sentence (const SteadStockAnswer *self)
{
  g_autoptr(GPtrArray) names = g_ptr_array_new ();
  g_autofree char *list = NULL;
  g_autofree char *escaped = NULL;

  for (guint i = 0; i < self->lines->len; i++)
    {
      const SteadStockLine *line = self->lines->pdata[i];

      if (line->low)
        g_ptr_array_add (names, line->item->name);
    }
  if (names->len == 0)
    return g_strdup (_("Nothing runs low."));
  g_ptr_array_add (names, NULL);
  list = stead_words_list ((const char * const *) names->pdata);
  escaped = g_markup_escape_text (list, -1);
  /* Translators: a list of things: "Layer feed and Carton". */
  return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "<b>%s</b> runs low.", "<b>%s</b> run low.",
                                       names->len - 1), escaped);
}

static char *
sentence_of (const SteadStockAnswer *self,
             const char             *currency)
{
  GString *text;
  guint on_hand = 0;
  g_autofree char *value = stead_money_format (self->value_cents, currency);
  g_autofree char *first = NULL;
  g_autofree char *low = NULL;

  for (guint i = 0; i < self->lines->len; i++)
    on_hand += ((const SteadStockLine *) self->lines->pdata[i])->stock.on_hand_base > 0 ? 1 : 0;
  if (on_hand == 0)
    return g_strdup (_("Nothing is on hand yet. Enter the first receipt or gift."));
  first = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE,
                                        "<b>%s</b> is on hand in %u kind of thing.",
                                        "<b>%s</b> is on hand in %u kinds of things.", on_hand), value, on_hand);
  low = low_sentence (self);
  text = g_string_new (NULL);
  stead_words_add (text, first);
  stead_words_add (text, low);
  return stead_words_end (text);
}

SteadStockAnswer *
stead_stock_answer_new (SteadStore  *store,
                        GError     **error)
{
  g_autoptr(SteadStockAnswer) self = NULL;
  g_autoptr(SteadFarm) farm = NULL;
  g_autoptr(GPtrArray) items = NULL;
  SteadDay today;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);

  farm = stead_farm_repo_get (store, error);
  if (farm == NULL)
    return NULL;
  items = stead_item_repo_list (store, error);
  if (items == NULL)
    return NULL;
  today = stead_store_get_today (store);
  self = g_new0 (SteadStockAnswer, 1);
  self->lines = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_stock_line_free);
  while (items->len > 0)
    {
      SteadStockLine *line = read_line (store, g_ptr_array_steal_index (items, 0), today, error);

      if (line == NULL)
        return NULL;
      g_ptr_array_add (self->lines, line);
      self->value_cents += line->stock.on_hand_cents;
    }
  g_ptr_array_sort (self->lines, compare_lines);
  self->sentence = sentence_of (self, farm->currency);
  return g_steal_pointer (&self);
}
