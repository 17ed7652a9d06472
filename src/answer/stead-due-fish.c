/* stead-due-fish.c - what is due, and wrong, with the fish. */
#include "config.h"

#include "answer/stead-due-private.h"
#include "answer/stead-fish-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Small fish grow fast; common practice, no source: every two to four weeks. */
#define SMALL_G 50
#define WEIGH_SMALL_DAYS 14
#define WEIGH_DAYS 28

/* A forecast and the feeding table need the present temperature. */
#define READ_DAYS 7

static void
add_for (SteadDueLook          *look,
         const SteadFishAnswer *fish,
         SteadDueKind           kind,
         char                  *text,
         char                  *detail)
{
  stead_due_add (look, kind, STEAD_TARGET_BATCH, fish->group->batch.id, text, detail);
}

static void
look_at_losses (SteadDueLook          *look,
                const SteadFishAnswer *fish)
{
  g_autofree char *lost = NULL;

  if (!stead_fish_losses_are_high (fish))
    return;
  lost = stead_words_fish (fish->week.deaths + fish->week.culled);
  /* Translators: a group of fish, "3 fish". */
  add_for (look, fish, STEAD_DUE_WARNING,
           g_strdup_printf (_("%s: %s lost in 7 days, more than is usual."), fish->group->batch.name, lost),
           g_strdup (_("Test the water first: oxygen, ammonia, nitrite, temperature. "
                       "Sick or dying fish are for a veterinarian.")));
  stead_due_explain (look->answer->dues, stead_fish_losses_worked (fish));
}

static gboolean
look_at_appetite (SteadDueLook          *look,
                  const SteadFishAnswer *fish)
{
  gboolean refused = FALSE;

  if (!stead_fish_refused_twice (look->store, fish->group, look->today, &refused, look->error))
    return FALSE;
  if (refused)
    /* Translators: a group of fish. */
    add_for (look, fish, STEAD_DUE_WARNING,
             g_strdup_printf (_("%s: feed was left twice running."), fish->group->batch.name),
             g_strdup (_("Test the water before you feed again, and take out what lies there.")));
  return TRUE;
}

static void
look_at_feed (SteadDueLook          *look,
              const SteadFishAnswer *fish)
{
  const char *name = fish->group->batch.name;
  g_autofree char *feed = NULL;

  if (fish->purged_on != STEAD_DAY_NONE)
    return;
  if (fish->feeds_today)
    {
      add_for (look, fish, STEAD_DUE_DONE, g_strdup_printf (_("%s: feed entered"), name), NULL);
      return;
    }
  if (!fish->has_rate)
    {
      add_for (look, fish, STEAD_DUE_TASK, g_strdup_printf (_("Enter the feed given to %s."), name),
               g_strdup (fish->no_rate));
      return;
    }
  if (fish->feed_on > look->today)
    return;
  feed = stead_quantity_format (fish->feed_kg, stead_unit_default (STEAD_DIMENSION_MASS, fish->farm->units));
  /* Translators: a group of fish, an amount of feed. */
  add_for (look, fish, STEAD_DUE_TASK, g_strdup_printf (_("Feed %s, and enter it: %s by the table."), name, feed),
           g_strdup (_("Only what they take in 15 to 30 minutes: the fish say when to stop.")));
  stead_due_explain (look->answer->dues, stead_fish_feed_worked (fish));
}

static void
look_at_weight (SteadDueLook          *look,
                const SteadFishAnswer *fish)
{
  SteadDay last = fish->last_weighed != STEAD_DAY_NONE ? fish->last_weighed : fish->group->batch.started_on;
  int days = fish->mean_g.likely < SMALL_G ? WEIGH_SMALL_DAYS : WEIGH_DAYS;
  g_autofree char *ago = NULL;

  if (fish->last_weighed == look->today)
    add_for (look, fish, STEAD_DUE_DONE, g_strdup_printf (_("%s: weighed"), fish->group->batch.name), NULL);
  if (look->today - last < days || fish->purged_on != STEAD_DAY_NONE)
    return;
  ago = stead_words_days (look->today - last);
  add_for (look, fish, STEAD_DUE_TASK,
           /* Translators: a group of fish. */
           g_strdup_printf (_("Weigh some fish of %s."), fish->group->batch.name),
           /* Translators: "30 days". */
           g_strdup_printf (_("Their weight was known %s ago. Weigh about 30, or a tenth of them, after a day without feed."),
                            ago));
  stead_due_explain_day (look->answer->dues, last, days);
}

static void
look_at_temperature (SteadDueLook          *look,
                     const SteadFishAnswer *fish)
{
  if (fish->water_day != STEAD_DAY_NONE && look->today - fish->water_day <= READ_DAYS)
    return;
  add_for (look, fish, STEAD_DUE_TASK,
           /* Translators: a group of fish. */
           g_strdup_printf (_("Read the temperature of the water of %s."), fish->group->batch.name),
           g_strdup (_("How much they eat and how fast they grow follows from it.")));
  if (fish->water_day != STEAD_DAY_NONE)
    stead_due_explain_day (look->answer->dues, fish->water_day, READ_DAYS);
}

static void
look_at_sale (SteadDueLook          *look,
              const SteadFishAnswer *fish)
{
  const SteadFish *group = fish->group;
  g_autofree char *share = stead_number_format (group->sale_frac * 100, 0);
  g_autofree char *days = stead_words_days (group->purge_days);

  if (fish->purged_on != STEAD_DAY_NONE && fish->purged_on <= look->today)
    add_for (look, fish, STEAD_DUE_TASK,
             /* Translators: a group of fish. */
             g_strdup_printf (_("Harvest %s: their purge is over."), group->batch.name), NULL);
  else if (fish->purged_on == STEAD_DAY_NONE && group->purge_days > 0 && fish->share_ready >= group->sale_frac)
    {
      add_for (look, fish, STEAD_DUE_TASK,
               /* Translators: a group of fish, so many of 100. */
               g_strdup_printf (_("Plan the sale of %s: %s in 100 have the sale weight."), group->batch.name, share),
               /* Translators: "4 days". */
               g_strdup_printf (_("Start the purge %s before it: clean water and no feed."), days));
      stead_due_explain (look->answer->dues, stead_fish_ready_worked (fish));
    }
}

static gboolean
look_at_group (SteadDueLook *look,
               gint64        id)
{
  g_autoptr(SteadFishAnswer) fish = stead_fish_answer_new_now (look->store, id, look->error);

  if (fish == NULL)
    return FALSE;
  if (fish->alive < 1)
    return TRUE;
  look_at_losses (look, fish);
  if (!look_at_appetite (look, fish)
      || !stead_due_look_at_receipts (look, id, fish->group->batch.name, fish->group->batch.started_on))
    return FALSE;
  look_at_feed (look, fish);
  look_at_temperature (look, fish);
  look_at_weight (look, fish);
  look_at_sale (look, fish);
  return TRUE;
}

gboolean
stead_due_look_at_fish (SteadDueLook *look)
{
  g_autoptr(GPtrArray) groups = stead_fish_repo_list (look->store, FALSE, look->error);

  for (guint i = 0; groups != NULL && i < groups->len; i++)
    {
      const SteadFish *group = groups->pdata[i];

      if (group->batch.started_on <= look->today && !look_at_group (look, group->batch.id))
        return FALSE;
    }
  return groups != NULL;
}
