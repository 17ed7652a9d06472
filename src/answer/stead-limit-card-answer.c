/* stead-limit-card-answer.c - the kitchen's own foods and their limits, in one language or in two.
 *
 * The foods are planned once, in the program's language, and the plan is told in each
 * language: what is a tomato sauce here is one there.
 */
#include "config.h"

#include "answer/stead-check-list.h"
#include "answer/stead-check-plan-private.h"
#include "answer/stead-language.h"
#include "answer/stead-limit-card-answer.h"

#include <glib/gi18n-lib.h>

static void
entry_free (gpointer data)
{
  SteadLimitCardEntry *entry = data;

  g_ptr_array_unref (entry->works);
  g_ptr_array_unref (entry->limits);
  g_ptr_array_unref (entry->foods);
  g_free (entry->source);
  g_free (entry);
}

static SteadLimitCardEntry *
entry_new (void)
{
  SteadLimitCardEntry *entry = g_new0 (SteadLimitCardEntry, 1);

  entry->works = g_ptr_array_new_with_free_func (g_free);
  entry->limits = g_ptr_array_new_with_free_func (g_free);
  entry->foods = g_ptr_array_new_with_free_func (g_free);
  return entry;
}

void
stead_limit_card_answer_free (SteadLimitCardAnswer *self)
{
  if (self == NULL)
    return;
  g_clear_pointer (&self->titles, g_ptr_array_unref);
  g_clear_pointer (&self->cautions, g_ptr_array_unref);
  g_clear_pointer (&self->entries, g_ptr_array_unref);
  g_free (self);
}

/* What is cooked, in the words of the tables; two limits of one food are told apart by it. */
static const char *
cook_of (const SteadCheckLine *line)
{
  static const struct { const char *subject, *work; } works[] = {
    { "raw_egg", NC_("limit card", "Cook eggs") },
    { "fish_intact", NC_("limit card", "Cook fish") },
    { "meat_intact", NC_("limit card", "Cook meat") },
    { "meat_ground", NC_("limit card", "Cook ground meat") },
    { "fish_comminuted", NC_("limit card", "Cook chopped fish") },
    { "stuffed_food", NC_("limit card", "Cook stuffed food") },
    { "whole_roast", NC_("limit card", "Cook roasts") },
    { "poultry", NC_("limit card", "Cook poultry") },
    { "plant_food", NC_("limit card", "Cook vegetables, fruit and grain") },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (works); i++)
    if (g_strcmp0 (works[i].subject, line->subject) == 0)
      return g_dpgettext2 (GETTEXT_PACKAGE, "limit card", works[i].work);
  return C_("limit card", "Cook");
}

static const char *
work_of (const SteadCheckLine *line)
{
  switch ((int) line->kind)
    {
    case STEAD_CHECK_LINE_RECEIVE_COLD: return C_("limit card", "Take in cold");
    case STEAD_CHECK_LINE_EGGS_COLD: return C_("limit card", "Keep eggs cold");
    case STEAD_CHECK_LINE_COOK: return cook_of (line);
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
add_once (GPtrArray  *texts,
          const char *text)
{
  if (text != NULL && !g_ptr_array_find_with_equal_func (texts, text, g_str_equal, NULL))
    g_ptr_array_add (texts, g_strdup (text));
}

/* One language more: an entry for each line that goes on the card, in the order of the plan. */
static void
say (SteadLimitCardAnswer       *self,
     const SteadCheckPlanAnswer *plan)
{
  guint at = 0;

  g_ptr_array_add (self->titles, g_strdup (_("Our limits")));
  g_ptr_array_add (self->cautions, g_strdup (plan->caution));
  for (guint i = 0; i < plan->lines->len; i++)
    {
      const SteadCheckSaid *said = plan->lines->pdata[i];
      const char *work = work_of (said->line);
      SteadLimitCardEntry *entry;

      if (work == NULL)
        continue;
      if (at == self->entries->len)
        g_ptr_array_add (self->entries, entry_new ());
      entry = self->entries->pdata[at++];
      add_once (entry->works, work);
      add_once (entry->limits, said->limit != NULL ? said->limit : said->text);
      add_once (entry->foods, said->food);
      if (entry->source == NULL)
        entry->source = g_strdup (said->source);
    }
}

static gboolean
same_texts (const GPtrArray *one,
            const GPtrArray *two)
{
  gboolean same = one->len == two->len;

  for (guint i = 0; same && i < one->len; i++)
    same = g_str_equal (one->pdata[i], two->pdata[i]);
  return same;
}

static SteadLimitCardEntry *
find_same (const GPtrArray           *entries,
           const SteadLimitCardEntry *wanted)
{
  for (guint i = 0; i < entries->len; i++)
    {
      SteadLimitCardEntry *entry = entries->pdata[i];

      if (same_texts (entry->works, wanted->works) && same_texts (entry->limits, wanted->limits)
          && g_str_equal (entry->source, wanted->source))
        return entry;
    }
  return NULL;
}

/* Foods of one limit stand together. */
static void
join_same (SteadLimitCardAnswer *self)
{
  g_autoptr(GPtrArray) all = g_steal_pointer (&self->entries);

  self->entries = g_ptr_array_new_with_free_func (entry_free);
  g_ptr_array_set_free_func (all, NULL);
  for (guint i = 0; i < all->len; i++)
    {
      SteadLimitCardEntry *entry = all->pdata[i], *same = find_same (self->entries, entry);

      if (same == NULL)
        {
          g_ptr_array_add (self->entries, entry);
          continue;
        }
      for (guint n = 0; n < entry->foods->len; n++)
        add_once (same->foods, entry->foods->pdata[n]);
      entry_free (entry);
    }
}

static SteadCheckPlanAnswer *
plan_of (SteadStore  *store,
         GError     **error)
{
  g_autofree char *foods = stead_check_own_foods (store, error);
  g_autoptr(GPtrArray) limits = foods != NULL
                                ? stead_local_limit_repo_list (store, stead_store_get_today (store), error) : NULL;
  g_autoptr(GArray) local = NULL;
  SteadCheckOrder order = { .kind = STEAD_CHECK_ORDER_MENU, .text = foods, .day = STEAD_DAY_NONE };

  if (limits == NULL)
    return NULL;
  local = stead_check_local_rows (limits);
  order.local = (const SteadLimitLocal *) (void *) local->data;
  order.n_local = local->len;
  return stead_check_plan_answer_new (store, &order, error);
}

SteadLimitCardAnswer *
stead_limit_card_answer_new (SteadStore          *store,
                             const char * const  *languages,
                             GError             **error)
{
  g_autoptr(SteadCheckPlanAnswer) plan = NULL;
  g_autoptr(SteadLimitCardAnswer) self = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);

  plan = plan_of (store, error);
  if (plan == NULL)
    return NULL;
  self = g_new0 (SteadLimitCardAnswer, 1);
  self->units = plan->farm->units;
  self->titles = g_ptr_array_new_with_free_func (g_free);
  self->cautions = g_ptr_array_new_with_free_func (g_free);
  self->entries = g_ptr_array_new_with_free_func (entry_free);
  if (languages == NULL)
    say (self, plan);
  for (; languages != NULL && *languages != NULL; languages++)
    {
      char *former = stead_language_enter (*languages);

      stead_check_plan_answer_say (plan);
      say (self, plan);
      stead_language_leave (former);
    }
  join_same (self);
  return g_steal_pointer (&self);
}
