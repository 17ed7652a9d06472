/* stead-batch-card-facts.c - what a batch is: the head of its card. */
#include "config.h"

#include "answer/stead-batch-card-private.h"
#include "answer/stead-batch-private.h"
#include "answer/stead-fish-answer.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/stead-money.h"
#include "store/stead-crop-repo.h"
#include "store/stead-fish-repo.h"
#include "store/stead-item-repo.h"
#include "store/stead-place-repo.h"

/* @value: (transfer full) (nullable): nothing is known, and no line stands there */
static void
add_fact (SteadCardTable *table,
          const char     *name,
          char           *value)
{
  SteadCardRow *row;

  if (value == NULL)
    return;
  row = stead_card_table_add_row (table);
  row->cells[0] = g_strdup (name);
  row->cells[1] = value;
}

static void
add_day (SteadCardTable *table,
         const char     *name,
         SteadDay        day)
{
  add_fact (table, name, day != STEAD_DAY_NONE ? stead_day_format (day, STEAD_DAY_STYLE_MEDIUM) : NULL);
}

/* What all the animals or plants cost, and whether they were given. */
static char *
price_text (const SteadBatchAnswer *batch,
            gint64                  cents,
            gboolean                is_gift)
{
  g_autofree char *money = stead_money_format (cents, batch->farm->currency);

  /* Translators: money. */
  return is_gift ? g_strdup_printf (_("%s, a gift"), money) : g_steal_pointer (&money);
}

/* "brown hybrid" beside "Hens". */
static char *
with_more (const char *what,
           const char *more)
{
  return more != NULL && *more != '\0' ? g_strdup_printf ("%s, %s", what, more) : g_strdup (what);
}

static const char *
bird_name (SteadSpecies species)
{
  switch (species)
    {
    case STEAD_SPECIES_HEN: return _("Hens");
    case STEAD_SPECIES_DUCK: return _("Ducks");
    case STEAD_SPECIES_QUAIL: return _("Quail");
    case STEAD_SPECIES_OTHER:
    default: return _("Other birds");
    }
}

static gboolean
add_flock (SteadStore              *store,
           const SteadBatchAnswer  *batch,
           SteadCardTable          *table,
           GError                 **error)
{
  g_autoptr(SteadFlock) flock = stead_flock_repo_get (store, batch->money.batch->id, error);
  gint64 alive = flock == NULL ? -1 : stead_flock_repo_alive (store, flock->id, batch->money.to + 1, error);

  if (alive < 0)
    return FALSE;
  add_fact (table, C_("line of a batch card", "What"), with_more (bird_name (flock->species), flock->strain));
  add_day (table, C_("line of a batch card", "Hatched on"), flock->hatched_on);
  add_fact (table, C_("line of a batch card", "Moved in"), stead_words_birds (flock->birds));
  add_fact (table, C_("line of a batch card", "Alive now"), batch->is_over ? NULL : stead_words_birds (alive));
  add_fact (table, C_("line of a batch card", "Price of all of them"),
            price_text (batch, flock->birds_cost_cents, flock->birds_are_gift));
  return TRUE;
}

static char *
stocked_text (const SteadFish *fish)
{
  g_autofree char *n = stead_words_fish (fish->stocked);
  g_autofree char *grams = stead_number_format (fish->stocked_g, 1);

  if (fish->stocked == 0)
    return g_strdup (_("All of them came from other tanks"));
  /* Translators: "200 fish", grams of one. */
  return g_strdup_printf (_("%s of %s g each"), n, grams);
}

static gboolean
add_fish (SteadStore              *store,
          const SteadBatchAnswer  *batch,
          SteadCardTable          *table,
          GError                 **error)
{
  g_autoptr(SteadFish) fish = stead_fish_repo_get (store, batch->money.batch->id, error);
  gint64 alive = fish == NULL ? -1 : stead_fish_repo_alive (store, fish->batch.id, batch->money.to + 1, error);
  g_autofree char *sale = NULL;

  if (alive < 0)
    return FALSE;
  sale = stead_number_format (fish->sale_g, 0);
  add_fact (table, C_("line of a batch card", "What"), stead_fish_species_name (fish));
  add_fact (table, C_("line of a batch card", "Put in"), stocked_text (fish));
  add_fact (table, C_("line of a batch card", "Alive now"), batch->is_over ? NULL : stead_words_fish (alive));
  add_fact (table, C_("line of a batch card", "Price of all of them"), price_text (batch, fish->cost_cents, fish->is_gift));
  /* Translators: least weight of one fish for sale, in grams. */
  add_fact (table, C_("line of a batch card", "Sold from"), g_strdup_printf (C_("weight", "%s g"), sale));
  return TRUE;
}

static const char *
system_name (SteadGrowSystem system)
{
  switch (system)
    {
    case STEAD_GROW_HYDROPONIC: return C_("how a crop grows", "in water with nutrients");
    case STEAD_GROW_AQUAPONIC: return C_("how a crop grows", "in the water of fish");
    case STEAD_GROW_SOIL:
    default: return C_("how a crop grows", "in soil");
    }
}

static gboolean
add_crop (SteadStore              *store,
          const SteadBatchAnswer  *batch,
          SteadCardTable          *table,
          GError                 **error)
{
  g_autoptr(SteadCrop) crop = stead_crop_repo_get (store, batch->money.batch->id, error);
  gint64 plants = crop == NULL ? -1 : stead_crop_repo_plants (store, crop->batch.id, batch->money.to + 1, error);
  g_autofree char *what = NULL;

  if (plants < 0)
    return FALSE;
  what = with_more (crop->crop, crop->variety);
  add_fact (table, C_("line of a batch card", "What"), with_more (what, system_name (crop->system)));
  add_fact (table, C_("line of a batch card", "Plants"), stead_number_format ((double) crop->plants, 0));
  add_fact (table, C_("line of a batch card", "Standing now"),
            batch->is_over ? NULL : stead_number_format ((double) plants, 0));
  add_day (table, C_("line of a batch card", "Sown on"), crop->sown_on);
  add_day (table, C_("line of a batch card", "Set out on"), crop->set_out_on);
  add_day (table, C_("line of a batch card", "First ripe on"), crop->first_ripe_on);
  add_fact (table, C_("line of a batch card", "Price of seed or plants"),
            crop->cost_cents > 0 ? price_text (batch, crop->cost_cents, crop->is_gift) : NULL);
  return TRUE;
}

static gboolean
add_kind (SteadStore              *store,
          const SteadBatchAnswer  *batch,
          SteadCardTable          *table,
          GError                 **error)
{
  switch (batch->money.batch->kind)
    {
    case STEAD_BATCH_FLOCK: return add_flock (store, batch, table, error);
    case STEAD_BATCH_FISH: return add_fish (store, batch, table, error);
    case STEAD_BATCH_CROP: return add_crop (store, batch, table, error);
    case STEAD_BATCH_KITCHEN:
    default: return TRUE;
    }
}

static gboolean
add_place (SteadStore        *store,
           const SteadBatch  *batch,
           SteadCardTable    *table,
           GError           **error)
{
  g_autoptr(GPtrArray) places = stead_place_repo_list (store, error);

  for (guint i = 0; places != NULL && i < places->len; i++)
    {
      const SteadPlaceFacts *place = places->pdata[i];

      if (place->id == batch->place_id)
        add_fact (table, C_("line of a batch card", "Where"), g_strdup (place->name));
    }
  return places != NULL;
}

static gboolean
add_feed (SteadStore        *store,
          const SteadBatch  *batch,
          SteadCardTable    *table,
          GError           **error)
{
  g_autoptr(SteadItem) feed = NULL;

  if (batch->feed_item_id == 0)
    return TRUE;
  feed = stead_item_repo_get (store, batch->feed_item_id, error);
  if (feed == NULL)
    return FALSE;
  add_fact (table, C_("line of a batch card", "Feed"), g_strdup (feed->name));
  return TRUE;
}

static char *
care_text (double minutes)
{
  g_autofree char *number = stead_number_format (minutes, 0);

  /* Translators: minutes of unpaid work. */
  return minutes > 0 ? g_strdup_printf (_("%s minutes a day, unpaid"), number) : NULL;
}

SteadCardTable *
stead_batch_card_facts (SteadStore              *store,
                        const SteadBatchAnswer  *batch,
                        GError                 **error)
{
  const SteadBatch *its = batch->money.batch;
  g_autoptr(SteadCardTable) table = stead_card_table_new ();

  stead_card_table_add_column (table, NULL, FALSE);
  stead_card_table_add_column (table, NULL, FALSE);
  if (!add_kind (store, batch, table, error) || !add_place (store, its, table, error))
    return NULL;
  add_day (table, C_("line of a batch card", "First day"), its->started_on);
  add_day (table, C_("line of a batch card", "Last day"), its->ended_on);
  add_fact (table, C_("line of a batch card", "Days"), stead_number_format (batch->money.days, 0));
  if (!add_feed (store, its, table, error))
    return NULL;
  add_fact (table, C_("line of a batch card", "Work"), care_text (its->care_minutes_day));
  add_fact (table, C_("line of a batch card", "Note"), g_strdup (its->note));
  return g_steal_pointer (&table);
}
