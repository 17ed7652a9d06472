/* stead-demo-farm.c - the invented farm that a visitor sees first.
 *
 * The farm is made in memory and put in place as a whole: a failure leaves no
 * file, and no copies of days that never were.
 */
#include "config.h"

#include <gio/gio.h>
#include <glib/gi18n-lib.h>
#include <gsl/gsl_rng.h>

#include "store/stead-demo-farm.h"
#include "store/stead-demo-private.h"
#include "store/stead-demo-resources.h"
#include "store/stead-store-error.h"

#define BUILT_IN "/farm/steading/Steading/demo/ember-lake.ini"

static void
story_clear (SteadDemoStory *story)
{
  for (int i = 0; story->days != NULL && i < story->n_days; i++)
    g_free (story->days[i].note);
  g_free (story->days);
  g_clear_pointer (&story->buys, g_ptr_array_unref);
  g_clear_pointer (&story->uses, g_ptr_array_unref);
  g_clear_pointer (&story->sales, g_ptr_array_unref);
  g_clear_pointer (&story->rng, gsl_rng_free);
  g_clear_pointer (&story->reader.keys, g_key_file_unref);
  g_clear_error (&story->reader.error);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (SteadDemoStory, story_clear)

static gboolean
load_keys (GKeyFile    *keys,
           const char  *description,
           GError     **error)
{
  g_autoptr(GBytes) built_in = NULL;
  g_autoptr(GError) inner = NULL;

  if (description != NULL)
    g_key_file_load_from_data (keys, description, (gsize) -1, G_KEY_FILE_NONE, &inner);
  else
    {
      built_in = g_resource_lookup_data (stead_demo_get_resource (), BUILT_IN, 0, &inner);
      if (built_in != NULL)
        g_key_file_load_from_bytes (keys, built_in, G_KEY_FILE_NONE, &inner);
    }
  if (inner == NULL)
    return TRUE;
  g_set_error (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_INVALID,
               _("The description of the demo farm cannot be read: %s"), inner->message);
  return FALSE;
}

static gboolean
make_story (SteadDemoStory  *story,
            GError         **error)
{
  double days = stead_demo_number (&story->reader, "farm", "days");
  double seed = stead_demo_number (&story->reader, "farm", "seed");

  if (story->reader.error == NULL && !(days >= 100 && days <= 3660))
    stead_demo_fault (&story->reader, "farm", "days");
  if (story->reader.error == NULL)
    {
      story->n_days = (int) days;
      story->first = story->today - story->n_days;
      story->days = g_new0 (SteadDemoDay, (gsize) story->n_days);
      gsl_rng_set (story->rng, (unsigned long) seed);
      if (stead_demo_make_days (story) && stead_demo_make_buys (story))
        return TRUE;
    }
  g_propagate_error (error, g_steal_pointer (&story->reader.error));
  return FALSE;
}

static SteadStore *
open_at (const char  *path,
         SteadDay     today,
         GError     **error)
{
  g_autoptr(SteadStore) store = stead_store_open (path, STEAD_STORE_OPEN_DEFAULT, error);

  if (store != NULL && stead_store_get_today (store) != today)
    stead_store_set_today (store, today);
  return g_steal_pointer (&store);
}

SteadStore *
stead_demo_farm_create (const char  *path,
                        const char  *description,
                        SteadDay     today,
                        GError     **error)
{
  return stead_demo_farm_create_with (path, description, today, NULL, error);
}

SteadStore *
stead_demo_farm_create_with (const char     *path,
                             const char     *description,
                             SteadDay        today,
                             SteadDemoMore   more,
                             GError        **error)
{
  g_auto(SteadDemoStory) story = { .today = today };
  g_autoptr(SteadStore) draft = NULL;
  g_autofree char *name = NULL;

  g_return_val_if_fail (path != NULL && today != STEAD_DAY_NONE, NULL);

  if (g_file_test (path, G_FILE_TEST_EXISTS))
    {
      g_set_error (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_INVALID,
                   _("There is already a file “%s”. Choose another name for the demo farm."), path);
      return NULL;
    }
  story.reader.keys = g_key_file_new ();
  story.rng = gsl_rng_alloc (gsl_rng_mt19937);
  story.buys = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_demo_buy_free);
  story.uses = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_demo_use_free);
  story.sales = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_demo_sale_free);
  if (!load_keys (story.reader.keys, description, error) || !make_story (&story, error))
    return NULL;
  name = stead_demo_text (&story.reader, "farm", "name");
  draft = stead_store_create_memory (name, error);
  if (draft == NULL ||
      !stead_demo_write (&story, draft, error) ||
      (more != NULL && !more (draft, error)) ||
      !stead_store_save_copy (draft, path, NULL, error))
    return NULL;
  return open_at (path, today, error);
}
