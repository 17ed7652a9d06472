/* stead-skill-why.c - how the skills of a person are counted. */
#include "config.h"

#include "answer/stead-skill-answer.h"
#include "answer/stead-sum-private.h"
#include "answer/stead-words-private.h"

#include <glib/gi18n-lib.h>

#define N_LEVELS (STEAD_SKILL_SHOWS + 1)   /* with "not tried yet" */

/* "saw it 2 + does it alone 3 = 5", of @from on; %NULL where no skill is so far. (transfer full) */
static char *
counted (const int *n,
         int        from)
{
  GString *sum = g_string_new (NULL);
  int total = 0;

  for (int level = from; level < N_LEVELS; level++)
    if (n[level] > 0)
      {
        g_autofree char *text = g_strdup_printf ("%d", n[level]);

        stead_sum_add_named (sum, stead_skill_level_text (level), text);
        total += n[level];
      }
  if (total > 0)
    stead_sum_end_count (sum, total);
  return g_string_free (sum, total == 0);
}

static char *
worked_of (const SteadSkillAnswer *self)
{
  int n[N_LEVELS] = { 0 };
  g_autofree char *tried = NULL, *alone = NULL;

  for (guint i = 0; i < self->rows->len; i++)
    n[((const SteadSkillRow *) self->rows->pdata[i])->best]++;
  tried = counted (n, STEAD_SKILL_SAW);
  alone = counted (n, STEAD_SKILL_ALONE);
  if (alone == NULL)
    /* Translators: a sum: "saw it 2 + did it with help 1 = 3". */
    return g_strdup_printf (_("Tried: %s"), tried);
  /* Translators: two sums: "saw it 2 + does it alone 1 = 3". */
  return g_strdup_printf (_("Tried: %1$s\nAlone: %2$s"), tried, alone);
}

GPtrArray *
stead_skill_answer_whys (const SteadSkillAnswer *self)
{
  GPtrArray *whys = stead_whys_new ();

  g_return_val_if_fail (self != NULL, whys);
  if (self->n_tried > 0)
    g_ptr_array_add (whys, stead_why_new (
      g_strdup (_("How the skills are counted")),
      _("A skill counts once, by the best of its tries. Alone: done alone, or shown to others. Shown by the log: a row of the log "
        "that is still there belongs to one of its tries. Checked: an advisor saw the best of them."),
      worked_of (self), _("Common practice, no source.")));
  return whys;
}
