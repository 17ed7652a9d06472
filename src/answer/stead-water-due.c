/* stead-water-due.c - what the waters ask for today. */
#include "config.h"

#include "answer/stead-due-private.h"
#include "answer/stead-water-private.h"

#include <glib/gi18n-lib.h>

/* Takes @text and @detail over. */
static void
add (GPtrArray        *dues,
     SteadDueKind      kind,
     const SteadWater *water,
     char             *text,
     char             *detail)
{
  SteadDue *due = g_new0 (SteadDue, 1);

  *due = (SteadDue) { .kind = kind, .text = text, .detail = detail, .target = STEAD_TARGET_WATER, .id = water->id };
  g_ptr_array_add (dues, due);
}

/* The worst reading of the last test, as long as that is the last word on the water. */
static gboolean
find_warning (SteadStore            *store,
              GPtrArray             *dues,
              const SteadWater      *water,
              const SteadWaterTest  *last,
              GError               **error)
{
  SteadWaterLine lines[STEAD_N_WATER_MEASURES];
  g_autoptr(GPtrArray) worst = NULL;
  SteadWaterScene scene;

  if (!stead_water_scene_read (store, water, &scene, error))
    return FALSE;
  stead_water_judge_test (&scene, last, lines);
  worst = stead_water_worst_lines (lines);
  if (worst->len > 0)
    {
      g_autofree char *sentence = stead_water_line_sentence (worst->pdata[0], scene.units);

      /* Translators: the name of a water, and a sentence about a reading of it. */
      add (dues, STEAD_DUE_WARNING, water, g_strdup_printf (_("%s: %s"), water->name, sentence), stead_water_todo (lines));
    }
  stead_water_scene_clear (&scene);
  return TRUE;
}

static void
find_test (GPtrArray            *dues,
           const SteadWater     *water,
           const SteadWaterTest *last,   /* (nullable) */
           SteadDay              today)
{
  g_autofree char *days = NULL;

  if (last != NULL && last->day == today)
    add (dues, STEAD_DUE_DONE, water, g_strdup_printf (_("%s: water tested"), water->name), NULL);
  else if (last == NULL)
    add (dues, STEAD_DUE_TASK, water, g_strdup_printf (_("Test the water of %s."), water->name), NULL);
  else if (last->day + water->test_days <= today)
    {
      days = stead_words_days (today - last->day);
      add (dues, STEAD_DUE_TASK, water, g_strdup_printf (_("Test the water of %s."), water->name),
           /* Translators: "8 days". */
           g_strdup_printf (_("The last test was %s ago."), days));
      stead_due_explain_day (dues, last->day, water->test_days);
    }
}

gboolean
stead_water_find_dues (SteadStore  *store,
                       GPtrArray   *dues,
                       GError     **error)
{
  g_autoptr(GPtrArray) waters = stead_water_repo_list (store, FALSE, error);

  if (waters == NULL)
    return FALSE;
  for (guint i = 0; i < waters->len; i++)
    {
      const SteadWater *water = waters->pdata[i];
      g_autoptr(GError) local_error = NULL;
      g_autoptr(SteadWaterTest) last = stead_water_test_repo_last (store, water->id, &local_error);

      if (local_error != NULL)
        {
          g_propagate_error (error, g_steal_pointer (&local_error));
          return FALSE;
        }
      if (last != NULL && !find_warning (store, dues, water, last, error))
        return FALSE;
      find_test (dues, water, last, stead_store_get_today (store));
    }
  return TRUE;
}
