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

/* The names, for a message: "Eggs, Eggs in trays". */
static char *
names_of (GArray *all)
{
  g_autoptr(GString) names = g_string_new (NULL);

  for (guint i = 0; i < all->len; i++)
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

gboolean
stead_subject_product (SteadStore  *store,
                       const char  *name,
                       gint64      *out_id,
                       GError     **error)
{
  g_autoptr(GPtrArray) products = NULL;
  g_autoptr(GArray) all = g_array_new (FALSE, FALSE, sizeof (Named));
  const Named *picked;

  g_return_val_if_fail (out_id != NULL, FALSE);
  products = stead_product_repo_list (store, TRUE, error);
  if (products == NULL)
    return FALSE;
  for (guint i = 0; i < products->len; i++)
    {
      const SteadProduct *product = products->pdata[i];
      Named named = { product->id, product->name, product->retired_on != STEAD_DAY_NONE };

      g_array_append_val (all, named);
    }
  picked = pick (all, name);
  if (picked != NULL)
    {
      *out_id = picked->id;
      return TRUE;
    }
  if (all->len == 0)
    g_set_error_literal (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_MISSING,
                         _("There is no product yet. Add one in Price."));
  else
    {
      g_autofree char *names = names_of (all);

      g_set_error (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_UNKNOWN,
                   _("No product is called “%s”. There is: %s."), name, names);
    }
  return FALSE;
}

gboolean
stead_subject_flock (SteadStore  *store,
                     const char  *name,
                     gint64      *out_id,
                     GError     **error)
{
  g_autoptr(GPtrArray) flocks = NULL;
  g_autoptr(GArray) all = g_array_new (FALSE, FALSE, sizeof (Named));
  const Named *picked;

  g_return_val_if_fail (out_id != NULL, FALSE);
  flocks = stead_flock_repo_list (store, TRUE, error);
  if (flocks == NULL)
    return FALSE;
  for (guint i = 0; i < flocks->len; i++)
    {
      const SteadFlock *flock = flocks->pdata[i];
      Named named = { flock->id, flock->name, flock->ended_on != STEAD_DAY_NONE };

      g_array_append_val (all, named);
    }
  picked = pick (all, name);
  if (picked != NULL)
    {
      *out_id = picked->id;
      return TRUE;
    }
  if (all->len == 0)
    g_set_error_literal (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_MISSING,
                         _("There is no flock yet. Add one in Raise."));
  else
    {
      g_autofree char *names = names_of (all);

      g_set_error (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_UNKNOWN,
                   _("No flock is called “%s”. There is: %s."), name, names);
    }
  return FALSE;
}

gboolean
stead_subject_water (SteadStore  *store,
                     const char  *name,
                     gint64      *out_id,
                     GError     **error)
{
  g_autoptr(GPtrArray) waters = NULL;
  g_autoptr(GArray) all = g_array_new (FALSE, FALSE, sizeof (Named));
  const Named *picked;

  g_return_val_if_fail (out_id != NULL, FALSE);
  waters = stead_water_repo_list (store, TRUE, error);
  if (waters == NULL)
    return FALSE;
  for (guint i = 0; i < waters->len; i++)
    {
      const SteadWater *water = waters->pdata[i];
      Named named = { water->id, water->name, water->ended_on != STEAD_DAY_NONE };

      g_array_append_val (all, named);
    }
  picked = pick (all, name);
  if (picked != NULL)
    {
      *out_id = picked->id;
      return TRUE;
    }
  if (all->len == 0)
    g_set_error_literal (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_MISSING,
                         _("There is no water yet. Add one in Raise."));
  else
    {
      g_autofree char *names = names_of (all);

      g_set_error (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_UNKNOWN,
                   _("No water is called “%s”. There is: %s."), name, names);
    }
  return FALSE;
}

gboolean
stead_subject_fish (SteadStore  *store,
                    const char  *name,
                    gint64      *out_id,
                    GError     **error)
{
  g_autoptr(GPtrArray) groups = NULL;
  g_autoptr(GArray) all = g_array_new (FALSE, FALSE, sizeof (Named));
  const Named *picked;

  g_return_val_if_fail (out_id != NULL, FALSE);
  groups = stead_fish_repo_list (store, TRUE, error);
  if (groups == NULL)
    return FALSE;
  for (guint i = 0; i < groups->len; i++)
    {
      const SteadFish *group = groups->pdata[i];
      Named named = { group->batch.id, group->batch.name, group->batch.ended_on != STEAD_DAY_NONE };

      g_array_append_val (all, named);
    }
  picked = pick (all, name);
  if (picked != NULL)
    {
      *out_id = picked->id;
      return TRUE;
    }
  if (all->len == 0)
    g_set_error_literal (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_MISSING,
                         _("There are no fish yet. Add a group in Raise."));
  else
    {
      g_autofree char *names = names_of (all);

      g_set_error (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_UNKNOWN,
                   _("No group of fish is called “%s”. There is: %s."), name, names);
    }
  return FALSE;
}

gboolean
stead_subject_crop (SteadStore  *store,
                    const char  *name,
                    gint64      *out_id,
                    GError     **error)
{
  g_autoptr(GPtrArray) crops = NULL;
  g_autoptr(GArray) all = g_array_new (FALSE, FALSE, sizeof (Named));
  const Named *picked;

  g_return_val_if_fail (out_id != NULL, FALSE);
  crops = stead_crop_repo_list (store, TRUE, error);
  if (crops == NULL)
    return FALSE;
  for (guint i = 0; i < crops->len; i++)
    {
      const SteadCrop *crop = crops->pdata[i];
      Named named = { crop->batch.id, crop->batch.name, crop->batch.ended_on != STEAD_DAY_NONE };

      g_array_append_val (all, named);
    }
  picked = pick (all, name);
  if (picked != NULL)
    {
      *out_id = picked->id;
      return TRUE;
    }
  if (all->len == 0)
    g_set_error_literal (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_MISSING,
                         _("There is no crop yet. Add one in Raise."));
  else
    {
      g_autofree char *names = names_of (all);

      g_set_error (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_UNKNOWN,
                   _("No crop is called “%s”. There is: %s."), name, names);
    }
  return FALSE;
}

gboolean
stead_subject_bay (SteadStore  *store,
                   const char  *name,
                   gint64      *out_id,
                   GError     **error)
{
  g_autoptr(GPtrArray) bays = NULL;
  g_autoptr(GArray) all = g_array_new (FALSE, FALSE, sizeof (Named));
  const Named *picked;

  g_return_val_if_fail (out_id != NULL, FALSE);
  bays = stead_place_repo_list (store, error);
  if (bays == NULL)
    return FALSE;
  for (guint i = 0; i < bays->len; i++)
    {
      const SteadPlaceFacts *bay = bays->pdata[i];
      Named named = { bay->id, bay->name, FALSE };

      if (bay->kind == STEAD_PLACE_BAY)
        g_array_append_val (all, named);
    }
  picked = pick (all, name);
  if (picked != NULL)
    {
      *out_id = picked->id;
      return TRUE;
    }
  if (all->len == 0)
    g_set_error_literal (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_MISSING,
                         _("There is no bay yet. Add a crop in Raise, and say where it stands."));
  else
    {
      g_autofree char *names = names_of (all);

      g_set_error (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_UNKNOWN,
                   _("No bay is called “%s”. There is: %s."), name, names);
    }
  return FALSE;
}

gboolean
stead_subject_recipe (SteadStore  *store,
                      const char  *name,
                      gint64      *out_id,
                      GError     **error)
{
  g_autoptr(GPtrArray) recipes = NULL;
  g_autoptr(GArray) all = g_array_new (FALSE, FALSE, sizeof (Named));
  const Named *picked;

  g_return_val_if_fail (out_id != NULL, FALSE);
  recipes = stead_recipe_repo_list (store, TRUE, error);
  if (recipes == NULL)
    return FALSE;
  for (guint i = 0; i < recipes->len; i++)
    {
      const SteadRecipe *recipe = recipes->pdata[i];
      Named named = { recipe->id, recipe->name, recipe->retired_on != STEAD_DAY_NONE };

      g_array_append_val (all, named);
    }
  picked = pick (all, name);
  if (picked != NULL)
    {
      *out_id = picked->id;
      return TRUE;
    }
  if (all->len == 0)
    g_set_error_literal (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_MISSING, _("There is no recipe yet."));
  else
    {
      g_autofree char *names = names_of (all);

      g_set_error (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_UNKNOWN,
                   _("No recipe is called “%s”. There is: %s."), name, names);
    }
  return FALSE;
}

gboolean
stead_subject_kitchen (SteadStore  *store,
                       const char  *name,
                       gint64      *out_id,
                       GError     **error)
{
  g_autoptr(GPtrArray) kitchens = NULL;
  g_autoptr(GArray) all = g_array_new (FALSE, FALSE, sizeof (Named));
  const Named *picked;

  g_return_val_if_fail (out_id != NULL, FALSE);
  kitchens = stead_kitchen_repo_list (store, TRUE, error);
  if (kitchens == NULL)
    return FALSE;
  for (guint i = 0; i < kitchens->len; i++)
    {
      const SteadKitchen *kitchen = kitchens->pdata[i];
      Named named = { kitchen->batch.id, kitchen->batch.name, kitchen->batch.ended_on != STEAD_DAY_NONE };

      g_array_append_val (all, named);
    }
  picked = pick (all, name);
  if (picked != NULL)
    {
      *out_id = picked->id;
      return TRUE;
    }
  if (all->len == 0)
    g_set_error_literal (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_MISSING, _("Nothing was cooked yet."));
  else
    {
      g_autofree char *names = names_of (all);

      g_set_error (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_UNKNOWN,
                   _("No kitchen batch is called “%s”. There is: %s."), name, names);
    }
  return FALSE;
}

gboolean
stead_subject_batch (SteadStore  *store,
                     const char  *name,
                     gint64      *out_id,
                     GError     **error)
{
  g_autoptr(GPtrArray) batches = NULL;
  g_autoptr(GArray) all = g_array_new (FALSE, FALSE, sizeof (Named));
  const Named *picked;

  g_return_val_if_fail (out_id != NULL, FALSE);
  batches = stead_batch_repo_list (store, TRUE, error);
  if (batches == NULL)
    return FALSE;
  for (guint i = 0; i < batches->len; i++)
    {
      const SteadBatch *batch = batches->pdata[i];
      Named named = { batch->id, batch->name, batch->ended_on != STEAD_DAY_NONE };

      g_array_append_val (all, named);
    }
  picked = pick (all, name);
  if (picked != NULL)
    {
      *out_id = picked->id;
      return TRUE;
    }
  if (all->len == 0)
    g_set_error_literal (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_MISSING,
                         _("Nothing is raised yet. Add a flock, fish or a crop in Raise."));
  else
    {
      g_autofree char *names = names_of (all);

      g_set_error (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_UNKNOWN,
                   _("No batch is called “%s”. There is: %s."), name, names);
    }
  return FALSE;
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

gboolean
stead_subject_account (SteadStore  *store,
                       const char  *name,
                       gint64      *out_id,
                       GError     **error)
{
  g_autoptr(GPtrArray) accounts = NULL;
  g_autoptr(GArray) all = g_array_new (FALSE, FALSE, sizeof (Named));
  const Named *picked;

  g_return_val_if_fail (out_id != NULL, FALSE);
  accounts = stead_account_repo_list (store, TRUE, error);
  if (accounts == NULL)
    return FALSE;
  for (guint i = 0; i < accounts->len; i++)
    {
      const SteadAccount *account = accounts->pdata[i];
      Named named = { account->id, account->name, account->closed_on != STEAD_DAY_NONE };

      g_array_append_val (all, named);
    }
  picked = pick (all, name);
  if (picked != NULL)
    {
      *out_id = picked->id;
      return TRUE;
    }
  if (all->len == 0)
    g_set_error_literal (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_MISSING,
                         _("The cash book has no account yet. Add one in Keep."));
  else
    {
      g_autofree char *names = names_of (all);

      g_set_error (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_UNKNOWN,
                   _("No account is called “%s”. There is: %s."), name, names);
    }
  return FALSE;
}

gboolean
stead_subject_enterprise (SteadStore  *store,
                          const char  *name,
                          gint64      *out_id,
                          GError     **error)
{
  g_autoptr(GPtrArray) enterprises = NULL;
  g_autoptr(GArray) all = g_array_new (FALSE, FALSE, sizeof (Named));
  const Named *picked;

  g_return_val_if_fail (out_id != NULL, FALSE);
  enterprises = stead_enterprise_repo_list (store, error);
  if (enterprises == NULL)
    return FALSE;
  for (guint i = 0; i < enterprises->len; i++)
    {
      const SteadEnterprise *enterprise = enterprises->pdata[i];
      Named named = { enterprise->id, enterprise->name, FALSE };

      g_array_append_val (all, named);
    }
  picked = pick (all, name);
  if (picked != NULL)
    {
      *out_id = picked->id;
      return TRUE;
    }
  if (all->len == 0)
    g_set_error_literal (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_MISSING,
                         _("The farm has no parts yet that are looked at on their own. Add one in Keep."));
  else
    {
      g_autofree char *names = names_of (all);

      g_set_error (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_UNKNOWN,
                   _("No part of the farm is called “%s”. There is: %s."), name, names);
    }
  return FALSE;
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
  names = names_of (all);
  g_set_error (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_UNKNOWN,
               _("No sale is called “%s”. There is: %s."), name, names);
  return FALSE;
}

/* A list a day would make a long message: the names of a few are enough. */
#define MOST_LISTS 8

gboolean
stead_subject_checklist (SteadStore  *store,
                         const char  *name,
                         gint64      *out_id,
                         GError     **error)
{
  g_autoptr(GPtrArray) lists = NULL;
  g_autoptr(GArray) all = g_array_new (FALSE, FALSE, sizeof (Named));
  const Named *picked;

  g_return_val_if_fail (out_id != NULL, FALSE);
  lists = stead_check_repo_list (store, stead_day_new (1900, 1, 1), stead_day_new (2199, 12, 31), error);
  if (lists == NULL)
    return FALSE;
  for (guint i = 0; i < lists->len; i++)
    {
      const SteadCheckList *list = lists->pdata[i];
      Named named = { list->id, list->name, list->signed_at != STEAD_TIME_NONE };

      g_array_append_val (all, named);
    }
  picked = pick (all, name);
  if (picked != NULL)
    {
      *out_id = picked->id;
      return TRUE;
    }
  if (all->len == 0)
    g_set_error_literal (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_MISSING, _("There is no checklist yet."));
  else
    {
      g_autofree char *names = NULL;

      g_array_set_size (all, MIN (all->len, MOST_LISTS));
      names = names_of (all);
      g_set_error (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_UNKNOWN,
                   _("No checklist is called “%s”. There is: %s."), name, names);
    }
  return FALSE;
}
