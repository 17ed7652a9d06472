/* stead-subject.c - which product, flock, group of fish or water a question or a paper is about, by name. */
#include "config.h"

#include "answer/stead-answer-error.h"
#include "answer/stead-subject.h"
#include "store/stead-cash-repo.h"
#include "store/stead-check-repo.h"
#include "store/stead-crop-repo.h"
#include "store/stead-farm-repo.h"
#include "store/stead-fish-repo.h"
#include "store/stead-flock-repo.h"
#include "store/stead-kitchen-repo.h"
#include "store/stead-lot-repo.h"
#include "store/stead-place-repo.h"
#include "store/stead-product-repo.h"
#include "store/stead-recipe-repo.h"
#include "store/stead-sale-repo.h"
#include "store/stead-trace-repo.h"
#include "store/stead-water-repo.h"

#include <glib/gi18n-lib.h>

/* Something with a name, of either kind. */
typedef struct
{
  gint64      id;
  const char *name;
  gboolean    over;
} Named;

static char *
folded (const char *name)
{
  g_autofree char *copy = g_strdup (name);

  return g_utf8_casefold (g_strstrip (copy), -1);
}

/* The first names, for a message: "Eggs, Eggs in trays". */
static char *
names_of (GArray *all,
          guint   most)
{
  g_autoptr(GString) names = g_string_new (NULL);

  for (guint i = 0; i < MIN (all->len, most); i++)
    g_string_append_printf (names, i == 0 ? "%s" : ", %s", g_array_index (all, Named, i).name);
  return g_strdup (names->str);
}

/* Returns: (nullable): the one called @name, or without a name the first that is not over */
static const Named *
pick (GArray     *all,
      const char *name)
{
  g_autofree char *wanted = name == NULL ? NULL : folded (name);

  for (guint i = 0; i < all->len; i++)
    {
      const Named *named = &g_array_index (all, Named, i);
      g_autofree char *its = folded (named->name);

      if (wanted == NULL ? !named->over : g_str_equal (wanted, its))
        return named;
    }
  return wanted == NULL && all->len > 0 ? &g_array_index (all, Named, 0) : NULL;
}

/* How one of a list is named; %FALSE: it is not of the kind that is asked for. */
typedef gboolean (*Describe) (gconstpointer thing, Named *out);

/* @things: (nullable) */
static GArray *
name_all (const GPtrArray *things,
          Describe         describe)
{
  GArray *all = g_array_new (FALSE, FALSE, sizeof (Named));

  for (guint i = 0; things != NULL && i < things->len; i++)
    {
      Named named;

      if (describe (things->pdata[i], &named))
        g_array_append_val (all, named);
    }
  return all;
}

/* The one that is meant; else says that there is @none, or by @unknown that none is called so. */
static gboolean settle (GArray *all, const char *name, gint64 *out_id, GError **error, const char *none,
                        const char *unknown, ...) G_GNUC_PRINTF (6, 7);

static gboolean
settle (GArray      *all,
        const char  *name,
        gint64      *out_id,
        GError     **error,
        const char  *none,
        const char  *unknown,
        ...)
{
  const Named *picked = pick (all, name);
  va_list words;

  if (picked != NULL)
    {
      *out_id = picked->id;
      return TRUE;
    }
  if (all->len == 0)
    g_set_error_literal (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_MISSING, none);
  else
    {
      g_autofree char *message = NULL;

      va_start (words, unknown);
      message = g_strdup_vprintf (unknown, words);
      va_end (words);
      g_set_error_literal (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_UNKNOWN, message);
    }
  return FALSE;
}

static gboolean
name_product (gconstpointer  thing,
              Named         *out)
{
  const SteadProduct *product = thing;

  *out = (Named) { product->id, product->name, product->retired_on != STEAD_DAY_NONE };
  return TRUE;
}

gboolean
stead_subject_product (SteadStore  *store,
                       const char  *name,
                       gint64      *out_id,
                       GError     **error)
{
  g_autoptr(GPtrArray) products = stead_product_repo_list (store, TRUE, error);
  g_autoptr(GArray) all = name_all (products, name_product);
  g_autofree char *names = names_of (all, G_MAXUINT);

  g_return_val_if_fail (out_id != NULL, FALSE);
  return products != NULL &&
         settle (all, name, out_id, error, _("There is no product yet. Add one in Price."),
                 _("No product is called “%s”. There is: %s."), name, names);
}

static gboolean
name_flock (gconstpointer  thing,
            Named         *out)
{
  const SteadFlock *flock = thing;

  *out = (Named) { flock->id, flock->name, flock->ended_on != STEAD_DAY_NONE };
  return TRUE;
}

gboolean
stead_subject_flock (SteadStore  *store,
                     const char  *name,
                     gint64      *out_id,
                     GError     **error)
{
  g_autoptr(GPtrArray) flocks = stead_flock_repo_list (store, TRUE, error);
  g_autoptr(GArray) all = name_all (flocks, name_flock);
  g_autofree char *names = names_of (all, G_MAXUINT);

  g_return_val_if_fail (out_id != NULL, FALSE);
  return flocks != NULL &&
         settle (all, name, out_id, error, _("There is no flock yet. Add one in Raise."),
                 _("No flock is called “%s”. There is: %s."), name, names);
}

static gboolean
name_water (gconstpointer  thing,
            Named         *out)
{
  const SteadWater *water = thing;

  *out = (Named) { water->id, water->name, water->ended_on != STEAD_DAY_NONE };
  return TRUE;
}

gboolean
stead_subject_water (SteadStore  *store,
                     const char  *name,
                     gint64      *out_id,
                     GError     **error)
{
  g_autoptr(GPtrArray) waters = stead_water_repo_list (store, TRUE, error);
  g_autoptr(GArray) all = name_all (waters, name_water);
  g_autofree char *names = names_of (all, G_MAXUINT);

  g_return_val_if_fail (out_id != NULL, FALSE);
  return waters != NULL &&
         settle (all, name, out_id, error, _("There is no water yet. Add one in Raise."),
                 _("No water is called “%s”. There is: %s."), name, names);
}

static gboolean
name_fish (gconstpointer  thing,
           Named         *out)
{
  const SteadFish *group = thing;

  *out = (Named) { group->batch.id, group->batch.name, group->batch.ended_on != STEAD_DAY_NONE };
  return TRUE;
}

gboolean
stead_subject_fish (SteadStore  *store,
                    const char  *name,
                    gint64      *out_id,
                    GError     **error)
{
  g_autoptr(GPtrArray) groups = stead_fish_repo_list (store, TRUE, error);
  g_autoptr(GArray) all = name_all (groups, name_fish);
  g_autofree char *names = names_of (all, G_MAXUINT);

  g_return_val_if_fail (out_id != NULL, FALSE);
  return groups != NULL &&
         settle (all, name, out_id, error, _("There are no fish yet. Add a group in Raise."),
                 _("No group of fish is called “%s”. There is: %s."), name, names);
}

static gboolean
name_crop (gconstpointer  thing,
           Named         *out)
{
  const SteadCrop *crop = thing;

  *out = (Named) { crop->batch.id, crop->batch.name, crop->batch.ended_on != STEAD_DAY_NONE };
  return TRUE;
}

gboolean
stead_subject_crop (SteadStore  *store,
                    const char  *name,
                    gint64      *out_id,
                    GError     **error)
{
  g_autoptr(GPtrArray) crops = stead_crop_repo_list (store, TRUE, error);
  g_autoptr(GArray) all = name_all (crops, name_crop);
  g_autofree char *names = names_of (all, G_MAXUINT);

  g_return_val_if_fail (out_id != NULL, FALSE);
  return crops != NULL &&
         settle (all, name, out_id, error, _("There is no crop yet. Add one in Raise."),
                 _("No crop is called “%s”. There is: %s."), name, names);
}

static gboolean
name_bay (gconstpointer  thing,
          Named         *out)
{
  const SteadPlaceFacts *bay = thing;

  *out = (Named) { bay->id, bay->name, FALSE };
  return bay->kind == STEAD_PLACE_BAY;
}

gboolean
stead_subject_bay (SteadStore  *store,
                   const char  *name,
                   gint64      *out_id,
                   GError     **error)
{
  g_autoptr(GPtrArray) bays = stead_place_repo_list (store, error);
  g_autoptr(GArray) all = name_all (bays, name_bay);
  g_autofree char *names = names_of (all, G_MAXUINT);

  g_return_val_if_fail (out_id != NULL, FALSE);
  return bays != NULL &&
         settle (all, name, out_id, error, _("There is no bay yet. Add a crop in Raise, and say where it stands."),
                 _("No bay is called “%s”. There is: %s."), name, names);
}

static gboolean
name_recipe (gconstpointer  thing,
             Named         *out)
{
  const SteadRecipe *recipe = thing;

  *out = (Named) { recipe->id, recipe->name, recipe->retired_on != STEAD_DAY_NONE };
  return TRUE;
}

gboolean
stead_subject_recipe (SteadStore  *store,
                      const char  *name,
                      gint64      *out_id,
                      GError     **error)
{
  g_autoptr(GPtrArray) recipes = stead_recipe_repo_list (store, TRUE, error);
  g_autoptr(GArray) all = name_all (recipes, name_recipe);
  g_autofree char *names = names_of (all, G_MAXUINT);

  g_return_val_if_fail (out_id != NULL, FALSE);
  return recipes != NULL &&
         settle (all, name, out_id, error, _("There is no recipe yet."),
                 _("No recipe is called “%s”. There is: %s."), name, names);
}

static gboolean
name_kitchen (gconstpointer  thing,
              Named         *out)
{
  const SteadKitchen *kitchen = thing;

  *out = (Named) { kitchen->batch.id, kitchen->batch.name, kitchen->batch.ended_on != STEAD_DAY_NONE };
  return TRUE;
}

gboolean
stead_subject_kitchen (SteadStore  *store,
                       const char  *name,
                       gint64      *out_id,
                       GError     **error)
{
  g_autoptr(GPtrArray) kitchens = stead_kitchen_repo_list (store, TRUE, error);
  g_autoptr(GArray) all = name_all (kitchens, name_kitchen);
  g_autofree char *names = names_of (all, G_MAXUINT);

  g_return_val_if_fail (out_id != NULL, FALSE);
  return kitchens != NULL &&
         settle (all, name, out_id, error, _("Nothing was cooked yet."),
                 _("No kitchen batch is called “%s”. There is: %s."), name, names);
}

static gboolean
name_batch (gconstpointer  thing,
            Named         *out)
{
  const SteadBatch *batch = thing;

  *out = (Named) { batch->id, batch->name, batch->ended_on != STEAD_DAY_NONE };
  return TRUE;
}

gboolean
stead_subject_batch (SteadStore  *store,
                     const char  *name,
                     gint64      *out_id,
                     GError     **error)
{
  g_autoptr(GPtrArray) batches = stead_batch_repo_list (store, TRUE, error);
  g_autoptr(GArray) all = name_all (batches, name_batch);
  g_autofree char *names = names_of (all, G_MAXUINT);

  g_return_val_if_fail (out_id != NULL, FALSE);
  return batches != NULL &&
         settle (all, name, out_id, error, _("Nothing is raised yet. Add a flock, fish or a crop in Raise."),
                 _("No batch is called “%s”. There is: %s."), name, names);
}

/* The newest that was made here; else the newest. */
static const SteadLot *
newest_lot (GPtrArray *lots)
{
  const SteadLot *newest = NULL;

  for (guint i = 0; i < lots->len; i++)
    {
      const SteadLot *lot = lots->pdata[i];
      gboolean made = lot->batch_id != 0, was = newest != NULL && newest->batch_id != 0;

      if (newest == NULL || (made && !was) ||
          (made == was && (lot->day > newest->day || (lot->day == newest->day && lot->id > newest->id))))
        newest = lot;
    }
  return newest;
}

gboolean
stead_subject_lot (SteadStore  *store,
                   const char  *name,
                   gint64      *out_id,
                   GError     **error)
{
  g_autoptr(GPtrArray) lots = NULL;
  const SteadLot *newest;
  gint64 id = name != NULL ? stead_trace_repo_find_code (store, name, error) : 0;

  g_return_val_if_fail (out_id != NULL, FALSE);
  if (id < 0)
    return FALSE;
  if (id > 0)
    {
      *out_id = id;
      return TRUE;
    }
  lots = stead_lot_repo_list (store, TRUE, error);
  if (lots == NULL)
    return FALSE;
  newest = newest_lot (lots);
  if (newest == NULL)
    g_set_error_literal (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_MISSING,
                         _("There is no lot yet. Enter a receipt or a harvest first."));
  else if (name != NULL)
    g_set_error (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_UNKNOWN,
                 _("No lot has the code “%s”. The newest is %s."), name, newest->code);
  else
    *out_id = newest->id;
  return newest != NULL && name == NULL;
}

static gboolean
name_account (gconstpointer  thing,
              Named         *out)
{
  const SteadAccount *account = thing;

  *out = (Named) { account->id, account->name, account->closed_on != STEAD_DAY_NONE };
  return TRUE;
}

gboolean
stead_subject_account (SteadStore  *store,
                       const char  *name,
                       gint64      *out_id,
                       GError     **error)
{
  g_autoptr(GPtrArray) accounts = stead_account_repo_list (store, TRUE, error);
  g_autoptr(GArray) all = name_all (accounts, name_account);
  g_autofree char *names = names_of (all, G_MAXUINT);

  g_return_val_if_fail (out_id != NULL, FALSE);
  return accounts != NULL &&
         settle (all, name, out_id, error, _("The cash book has no account yet. Add one in Keep."),
                 _("No account is called “%s”. There is: %s."), name, names);
}

static gboolean
name_enterprise (gconstpointer  thing,
                 Named         *out)
{
  const SteadEnterprise *enterprise = thing;

  *out = (Named) { enterprise->id, enterprise->name, FALSE };
  return TRUE;
}

gboolean
stead_subject_enterprise (SteadStore  *store,
                          const char  *name,
                          gint64      *out_id,
                          GError     **error)
{
  g_autoptr(GPtrArray) enterprises = stead_enterprise_repo_list (store, error);
  g_autoptr(GArray) all = name_all (enterprises, name_enterprise);
  g_autofree char *names = names_of (all, G_MAXUINT);

  g_return_val_if_fail (out_id != NULL, FALSE);
  return enterprises != NULL &&
         settle (all, name, out_id, error, _("The farm has no parts yet that are looked at on their own. Add one in Keep."),
                 _("No part of the farm is called “%s”. There is: %s."), name, names);
}

/* By name and day first, then those that are not cashed up, the nearest day first. */
static const SteadSale *
pick_sale (const GPtrArray *sales,
           const char      *name)
{
  const SteadSale *picked = NULL;
  g_autofree char *wanted = folded (name);

  for (guint i = 0; i < sales->len; i++)
    {
      const SteadSale *sale = sales->pdata[i];
      g_autofree char *day = stead_day_format (sale->day, STEAD_DAY_STYLE_ISO);
      g_autofree char *full = g_strdup_printf ("%s %s", sale->name, day);
      g_autofree char *its = folded (sale->name);
      g_autofree char *dated = folded (full);

      if (g_str_equal (wanted, dated))
        return sale;
      if (g_str_equal (wanted, its) && (picked == NULL || sale->count_id == 0))
        picked = sale;
    }
  return picked;
}

gboolean
stead_subject_sale (SteadStore  *store,
                    const char  *name,
                    gint64      *out_id,
                    GError     **error)
{
  g_autoptr(GPtrArray) sales = NULL;
  g_autoptr(GArray) all = g_array_new (FALSE, FALSE, sizeof (Named));
  g_autofree char *names = NULL;
  const SteadSale *picked = NULL;
  gint64 next;

  g_return_val_if_fail (out_id != NULL, FALSE);
  sales = stead_sale_repo_list (store, error);
  next = sales != NULL ? stead_sale_repo_next (store, error) : -1;
  if (next < 0)
    return FALSE;
  for (guint i = 0; i < sales->len; i++)
    {
      const SteadSale *sale = sales->pdata[i];
      Named named = { sale->id, sale->name, sale->count_id != 0 };

      g_array_append_val (all, named);
      if (name == NULL && (picked == NULL || sale->id == next))
        picked = sale;
    }
  if (name != NULL)
    picked = pick_sale (sales, name);
  if (picked != NULL)
    {
      *out_id = picked->id;
      return TRUE;
    }
  if (all->len == 0)
    {
      g_set_error_literal (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_MISSING,
                           _("No sale is planned yet. Plan one in Sell."));
      return FALSE;
    }
  names = names_of (all, G_MAXUINT);
  g_set_error (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_UNKNOWN,
               _("No sale is called “%s”. There is: %s."), name, names);
  return FALSE;
}

/* A list a day would make a long message: the names of a few are enough. */
#define MOST_LISTS 8

static gboolean
name_checklist (gconstpointer  thing,
                Named         *out)
{
  const SteadCheckList *list = thing;

  *out = (Named) { list->id, list->name, list->signed_at != STEAD_TIME_NONE };
  return TRUE;
}

gboolean
stead_subject_checklist (SteadStore  *store,
                         const char  *name,
                         gint64      *out_id,
                         GError     **error)
{
  g_autoptr(GPtrArray) lists =
    stead_check_repo_list (store, stead_day_new (1900, 1, 1), stead_day_new (2199, 12, 31), error);
  g_autoptr(GArray) all = name_all (lists, name_checklist);
  g_autofree char *names = names_of (all, MOST_LISTS);

  g_return_val_if_fail (out_id != NULL, FALSE);
  return lists != NULL &&
         settle (all, name, out_id, error, _("There is no checklist yet."),
                 _("No checklist is called “%s”. There is: %s."), name, names);
}
