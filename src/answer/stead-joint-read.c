/* stead-joint-read.c - what comes of a batch, how much, and at which price. */
#include "config.h"

#include "answer/stead-joint-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "answer/stead-answer-error.h"
#include "answer/stead-batch-money.h"
#include "core/stead-egg.h"
#include "core/stead-money.h"
#include "core/stead-us-units.h"
#include "store/stead-crop-repo.h"
#include "store/stead-item-repo.h"
#include "store/stead-lot-repo.h"

#define EGGS_PER_DOZEN 12
#define DAYS_PER_WEEK 7.0
#define LONGEST_GRADE 32

static void
part_free (SteadJointPart *part)
{
  g_free (part->id);
  g_free (part->name);
  g_free (part->made);
  g_free (part);
}

/* Takes @id and @name. */
static SteadJointPart *
add_part (SteadJointAnswer *self,
          char             *id,
          char             *name)
{
  SteadJointPart *part = g_new0 (SteadJointPart, 1);

  part->id = id;
  part->name = name;
  part->carries = TRUE;
  part->pack = STEAD_PACK_PIECE;
  part->base_per_unit = 1;
  g_ptr_array_add (self->parts, part);
  return part;
}

/* By the pound or the kilogram, as the farm weighs. */
static void
tell_by_weight (const SteadJointAnswer *self,
                SteadJointPart         *part)
{
  gboolean pounds = self->farm->units == STEAD_UNITS_US;

  part->pack = pounds ? STEAD_PACK_POUND : STEAD_PACK_KILOGRAM;
  part->base_per_unit = pounds ? STEAD_POUND_KG : 1;
  part->log[STEAD_JOINT_WEIGHT] = part->base_per_unit;
}

/* --- prices ------------------------------------------------------------------------------ */

/* How well @product's price fits what comes of @batch: 2: it is sold of it, 1: of another one of its
 * kind, 0: not; -1 with @error. */
static int
price_fit (SteadStore          *store,
           const SteadProduct  *product,
           const SteadBatch    *batch,
           gint64               item_id,
           GError             **error)
{
  g_autoptr(SteadBatch) other = NULL;

  if (product->batch_id == batch->id || (item_id != 0 && product->item_id == item_id))
    return 2;
  if (product->batch_id == 0)
    return 0;
  other = stead_batch_repo_get (store, product->batch_id, error);
  return other == NULL ? -1 : other->kind == batch->kind;
}

/* Cents for one base unit of what comes of @batch, item @item_id, as it is sold; 0: no price.
 * Of several packs that counts of which most is planned: that is how most of it goes. */
static gboolean
read_price (SteadStore        *store,
            const SteadBatch  *batch,
            gint64             item_id,
            double            *out_cents,
            GError           **error)
{
  g_autoptr(GPtrArray) products = stead_product_repo_list (store, FALSE, error);
  double best = -1;
  int best_fit = 1;

  *out_cents = 0;
  for (guint i = 0; products != NULL && i < products->len; i++)
    {
      const SteadProduct *product = products->pdata[i];
      g_autoptr(GError) local_error = NULL;
      int fit = price_fit (store, product, batch, item_id, error);
      double planned = (double) product->planned_units * product->base_per_unit;
      gint64 cents;

      if (fit < 0)
        return FALSE;
      if (fit < best_fit || (fit == best_fit && planned <= best))
        continue;
      cents = stead_product_repo_price_on (store, product->id, stead_store_get_today (store), &local_error);
      if (local_error != NULL)
        {
          g_propagate_error (error, g_steal_pointer (&local_error));
          return FALSE;
        }
      if (cents < 0)
        continue;
      best = planned;
      best_fit = fit;
      *out_cents = (double) cents / product->base_per_unit;
    }
  return products != NULL;
}

/* What @item_id goes into: price and further cost of one base unit of the item.  @cost is that of a
 * product that is cooked from it. */
static gboolean
goes_into (const SteadCostAnswer *cost,
           gint64                 item_id,
           gint64                 price_cents,
           SteadJointPart        *part)
{
  for (guint i = 0; i < cost->uses->len; i++)
    {
      const SteadUse *use = cost->uses->pdata[i];
      double base = use->quantity_base / cost->sheet.good_units;
      double own = (double) use->cost_cents / cost->sheet.good_units;

      if (use->item_id != item_id || !(base > 0) || !isfinite (base))
        continue;
      part->made = g_strdup (cost->product->name);
      part->log[STEAD_JOINT_FINAL] = (double) price_cents / base * part->base_per_unit;
      part->log[STEAD_JOINT_FURTHER] = MAX ((double) cost->sheet.unit_cents - own, 0) / base * part->base_per_unit;
      return TRUE;
    }
  return FALSE;
}

/* The first product of the kitchen that has a price and is made from @item_id. */
static gboolean
read_made (SteadStore      *store,
           gint64           item_id,
           SteadJointPart  *part,
           GError         **error)
{
  g_autoptr(GPtrArray) products = stead_product_repo_list (store, FALSE, error);

  for (guint i = 0; products != NULL && part->made == NULL && i < products->len; i++)
    {
      const SteadProduct *product = products->pdata[i];
      g_autoptr(GError) local_error = NULL;
      g_autoptr(SteadCostAnswer) cost = NULL;
      gint64 cents;

      if (product->item_id == 0 || product->item_id == item_id || product->batch_id != 0)
        continue;
      cents = stead_product_repo_price_on (store, product->id, stead_store_get_today (store), &local_error);
      if (local_error == NULL && cents >= 0)
        cost = stead_cost_answer_new (store, product->id, STEAD_PERIOD_12_WEEKS, &local_error);
      if (local_error != NULL && !g_error_matches (local_error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_MISSING))
        {
          g_propagate_error (error, g_steal_pointer (&local_error));
          return FALSE;
        }
      if (cost != NULL && cost->kitchen != NULL && cost->sheet.good_units > 0)
        goes_into (cost, item_id, cents, part);
    }
  return products != NULL;
}

/* --- a flock ------------------------------------------------------------------------------- */

static double
sum_so_far_and_to_come (const SteadBatchMoney *money)
{
  /* What the hens bring at the end is a value of their own here, so it does not come off. */
  return money->cost.so_far_cents + money->cost.to_come_cents + money->salvage_cents;
}

static gboolean
read_flock (SteadStore             *store,
            SteadJointAnswer       *self,
            const SteadBatchMoney  *money,
            GError                **error)
{
  g_autoptr(SteadFlock) flock = stead_flock_repo_get (store, self->batch->id, error);
  SteadJointPart *eggs = NULL, *hens;
  gint64 alive, item = stead_harvest_repo_last_item (store, self->batch->id, error);
  double cents, weeks;

  if (flock == NULL || item < 0 || (alive = stead_flock_repo_alive (store, flock->id, money->to + 1, error)) < 0
      || !read_price (store, self->batch, item, &cents, error))
    return FALSE;
  weeks = (money->to - flock->hatched_on) / DAYS_PER_WEEK;
  eggs = add_part (self, g_strdup ("eggs"), g_strdup (_("Eggs")));
  eggs->pack = STEAD_PACK_DOZEN;
  eggs->base_per_unit = EGGS_PER_DOZEN;
  eggs->log[STEAD_JOINT_QUANTITY] = (money->cost.good_base + money->cost.expected_base) / EGGS_PER_DOZEN;
  eggs->log[STEAD_JOINT_WEIGHT] = flock->species == STEAD_SPECIES_HEN
                                  ? stead_egg_weight_default_g (weeks) / 1000 * EGGS_PER_DOZEN : 0;
  eggs->log[STEAD_JOINT_SPLIT] = cents * EGGS_PER_DOZEN;
  hens = add_part (self, g_strdup ("hens"), g_strdup (flock->species == STEAD_SPECIES_HEN ? _("Hens at the end")
                                                                                           : _("Birds at the end")));
  hens->log[STEAD_JOINT_QUANTITY] = (double) alive;
  hens->log[STEAD_JOINT_SPLIT] = (double) flock->salvage_cents / (double) MAX (flock->birds, 1);
  self->joint_cents = stead_money_round (MAX (sum_so_far_and_to_come (money), 0));
  return TRUE;
}

/* --- fish and the plants on their water -------------------------------------------------------- */

static gboolean
overlaps (const SteadBatch *a,
          const SteadBatch *b)
{
  return (a->ended_on == STEAD_DAY_NONE || b->started_on <= a->ended_on)
         && (b->ended_on == STEAD_DAY_NONE || a->started_on <= b->ended_on);
}

/* Own cost of one unit: all but what is shared, over all that the batch gives.  @good_base: of it, what
 * came while the water was shared. */
static void
put_output (SteadJointPart        *part,
            const SteadBatchMoney *money,
            double                 good_base,
            double                 cents_per_base,
            double                 own_cents)
{
  double units = (money->cost.good_base + money->cost.expected_base) / part->base_per_unit;

  part->own = TRUE;
  part->log[STEAD_JOINT_QUANTITY] = (good_base + money->cost.expected_base) / part->base_per_unit;
  part->log[STEAD_JOINT_SPLIT] = part->log[STEAD_JOINT_FINAL] = cents_per_base * part->base_per_unit;
  part->log[STEAD_JOINT_FURTHER] = units > 0 ? MAX (own_cents, 0) / units : 0;
}

static gboolean
add_crop (SteadStore        *store,
          SteadJointAnswer  *self,
          const SteadCrop   *crop,
          GError           **error)
{
  g_auto(SteadBatchMoney) money = { 0 };
  gint64 item = stead_harvest_repo_last_item (store, crop->batch.id, error);
  SteadHarvestTotals shared;
  SteadJointPart *part;
  double cents;

  if (item < 0 || !stead_batch_money_read (store, self->farm, crop->batch.id, &money, error)
      || !read_price (store, &crop->batch, item, &cents, error)
      || !stead_harvest_repo_totals (store, crop->batch.id, MAX (money.from, self->batch->started_on), money.to, &shared,
                                     error))
    return FALSE;
  if (shared.good_base <= 0 && money.cost.expected_base <= 0)
    return TRUE;
  part = add_part (self, g_strdup_printf ("crop-%" G_GINT64_FORMAT, crop->batch.id), g_strdup (crop->batch.name));
  tell_by_weight (self, part);
  put_output (part, &money, shared.good_base, cents, money.cost.so_far_cents + money.cost.to_come_cents);
  return TRUE;
}

static gboolean
read_fish (SteadStore             *store,
           SteadJointAnswer       *self,
           const SteadBatchMoney  *money,
           GError                **error)
{
  g_autoptr(GPtrArray) crops = stead_crop_repo_list (store, TRUE, error);
  double feed = money->so_far[STEAD_COST_FEED] + money->to_come[STEAD_COST_FEED], cents;
  gint64 item = stead_harvest_repo_last_item (store, self->batch->id, error);
  SteadJointPart *fish;

  if (crops == NULL || item < 0 || !read_price (store, self->batch, item, &cents, error))
    return FALSE;
  self->feed_only = TRUE;
  self->joint_cents = stead_money_round (MAX (feed, 0));
  fish = add_part (self, g_strdup ("fish"), g_strdup (self->batch->name));
  tell_by_weight (self, fish);
  put_output (fish, money, money->cost.good_base, cents, money->cost.so_far_cents + money->cost.to_come_cents - feed);
  for (guint i = 0; i < crops->len; i++)
    {
      const SteadCrop *crop = crops->pdata[i];

      if (crop->system == STEAD_GROW_AQUAPONIC && overlaps (&crop->batch, self->batch)
          && !add_crop (store, self, crop, error))
        return FALSE;
    }
  return TRUE;
}

/* --- a crop by its grades -------------------------------------------------------------------- */

static char *
grade_id (const char *grade)
{
  g_autofree char *low = grade != NULL ? g_utf8_strdown (grade, -1) : NULL;
  g_autofree char *head = low != NULL ? g_utf8_substring (low, 0, MIN (g_utf8_strlen (low, -1), LONGEST_GRADE)) : NULL;

  return head != NULL ? g_strconcat ("grade-", head, NULL) : g_strdup ("ungraded");
}

static SteadJointPart *
find_part (const SteadJointAnswer *self,
           const char             *id)
{
  for (guint i = 0; i < self->parts->len; i++)
    if (strcmp (((SteadJointPart *) self->parts->pdata[i])->id, id) == 0)
      return self->parts->pdata[i];
  return NULL;
}

static gboolean
add_grade (SteadStore          *store,
           SteadJointAnswer    *self,
           const SteadHarvest  *harvest,
           GError             **error)
{
  g_autofree char *id = grade_id (harvest->grade);
  SteadJointPart *part = find_part (self, id);
  g_autoptr(SteadItem) item = NULL;

  if (part == NULL)
    {
      item = stead_item_repo_get (store, harvest->item_id, error);
      if (item == NULL)
        return FALSE;
      /* Translators: what was picked, and its grade: "Tomatoes, second". */
      part = add_part (self, g_strdup (id), harvest->grade == NULL ? g_strdup (item->name)
                       : g_strdup_printf (C_("what was picked", "%s, %s"), item->name, harvest->grade));
      if (item->unit->dimension == STEAD_DIMENSION_MASS)
        tell_by_weight (self, part);
    }
  part->log[STEAD_JOINT_QUANTITY] += harvest->quantity_base / part->base_per_unit;
  return TRUE;
}

/* What is still to come is graded as what came so far. */
static SteadJointPart *
add_expected (SteadJointAnswer *self,
              double            expected_base)
{
  SteadJointPart *most = NULL;
  double all = 0;

  for (guint i = 0; i < self->parts->len; i++)
    {
      SteadJointPart *part = self->parts->pdata[i];

      all += part->log[STEAD_JOINT_QUANTITY] * part->base_per_unit;
      if (most == NULL || part->log[STEAD_JOINT_QUANTITY] > most->log[STEAD_JOINT_QUANTITY])
        most = part;
    }
  for (guint i = 0; all > 0 && i < self->parts->len; i++)
    ((SteadJointPart *) self->parts->pdata[i])->log[STEAD_JOINT_QUANTITY] *= 1 + expected_base / all;
  return most;
}

static int
by_quantity (gconstpointer a,
             gconstpointer b)
{
  const SteadJointPart *one = *(SteadJointPart * const *) a, *other = *(SteadJointPart * const *) b;
  double x = one->log[STEAD_JOINT_QUANTITY] * one->base_per_unit, y = other->log[STEAD_JOINT_QUANTITY] * other->base_per_unit;

  return x > y ? -1 : x < y ? 1 : strcmp (one->id, other->id);
}

static void
add_waste (SteadJointAnswer *self,
           double            lost_base)
{
  SteadJointPart *waste;

  if (!(lost_base > 0))
    return;
  waste = add_part (self, g_strdup ("waste"), g_strdup (C_("what was picked", "Waste")));
  tell_by_weight (self, waste);
  waste->carries = FALSE;
  waste->log[STEAD_JOINT_QUANTITY] = lost_base / waste->base_per_unit;
}

static gboolean
read_crop (SteadStore             *store,
           SteadJointAnswer       *self,
           const SteadBatchMoney  *money,
           GError                **error)
{
  g_autoptr(GPtrArray) harvests = stead_harvest_repo_list (store, self->batch->id, money->from, money->to, error);
  SteadJointPart *most;
  gint64 item_id = 0;
  double cents;

  for (guint i = 0; harvests != NULL && i < harvests->len; i++)
    {
      const SteadHarvest *harvest = harvests->pdata[i];

      if (!(harvest->quantity_base > 0))
        continue;
      item_id = harvest->item_id;
      if (!add_grade (store, self, harvest, error))
        return FALSE;
    }
  if (harvests == NULL || !read_price (store, self->batch, item_id, &cents, error))
    return FALSE;
  most = add_expected (self, money->cost.expected_base);
  for (guint i = 0; i < self->parts->len; i++)
    {
      SteadJointPart *part = self->parts->pdata[i];

      if (part == most)
        part->log[STEAD_JOINT_SPLIT] = cents * part->base_per_unit;
      else if (!read_made (store, item_id, part, error))
        return FALSE;
    }
  g_ptr_array_sort (self->parts, by_quantity);
  add_waste (self, money->harvested.lost_base);
  self->joint_cents = stead_money_round (MAX (sum_so_far_and_to_come (money), 0));
  return TRUE;
}

/* --- all ------------------------------------------------------------------------------------------ */

static gboolean
read_parts (SteadStore        *store,
            SteadJointAnswer  *self,
            GError           **error)
{
  g_auto(SteadBatchMoney) money = { 0 };

  if (!stead_batch_money_read (store, self->farm, self->batch->id, &money, error))
    return FALSE;
  switch (self->batch->kind)
    {
    case STEAD_BATCH_FLOCK: return read_flock (store, self, &money, error);
    case STEAD_BATCH_FISH: return read_fish (store, self, &money, error);
    case STEAD_BATCH_CROP: return read_crop (store, self, &money, error);
    case STEAD_BATCH_KITCHEN:
    default: return TRUE;
    }
}

gboolean
stead_joint_read (SteadStore        *store,
                  SteadJointAnswer  *self,
                  gint64             batch_id,
                  GError           **error)
{
  guint carriers = 0;

  self->parts = g_ptr_array_new_with_free_func ((GDestroyNotify) part_free);
  self->farm = stead_farm_repo_get (store, error);
  self->batch = self->farm != NULL ? stead_batch_repo_get (store, batch_id, error) : NULL;
  if (self->batch == NULL || !read_parts (store, self, error))
    return FALSE;
  for (guint i = 0; i < self->parts->len; i++)
    carriers += ((SteadJointPart *) self->parts->pdata[i])->carries;
  if (carriers > 1)
    return TRUE;
  g_set_error (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_MISSING,
               _("Only one thing comes of “%s” so far, so there is no cost to share. Write down what was picked by "
                 "grades, or choose another batch."), self->batch->name);
  return FALSE;
}

static gboolean
has_aquaponic (const GPtrArray  *crops,
               const SteadBatch *fish)
{
  for (guint i = 0; i < crops->len; i++)
    if (((const SteadCrop *) crops->pdata[i])->system == STEAD_GROW_AQUAPONIC
        && overlaps (&((const SteadCrop *) crops->pdata[i])->batch, fish))
      return TRUE;
  return FALSE;
}

GPtrArray *
stead_joint_batches (SteadStore  *store,
                     GError     **error)
{
  g_autoptr(GPtrArray) all = NULL, crops = NULL;
  g_autoptr(GPtrArray) out = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_batch_free);

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  all = stead_batch_repo_list (store, TRUE, error);
  crops = all != NULL ? stead_crop_repo_list (store, TRUE, error) : NULL;
  if (crops == NULL)
    return NULL;
  for (guint i = 0; i < all->len; i++)
    {
      const SteadBatch *batch = all->pdata[i];

      if (batch->kind == STEAD_BATCH_FLOCK || batch->kind == STEAD_BATCH_CROP
          || (batch->kind == STEAD_BATCH_FISH && has_aquaponic (crops, batch)))
        g_ptr_array_add (out, stead_batch_copy (batch));
    }
  return g_steal_pointer (&out);
}
