/* stead-event-why.c - shares of the points and hours of preparation, worked out. */
#include "config.h"

#include "answer/stead-event-answer.h"
#include "answer/stead-hours-answer.h"
#include "answer/stead-words-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Of many the newest. */
#define TOLD 12

#define NO_SOURCE N_("Common practice, no source.")

static SteadWhy *
scores_why (const GPtrArray *scores)
{
  GString *worked = g_string_new (NULL);

  for (guint i = scores->len - MIN (scores->len, TOLD); i < scores->len; i++)
    {
      const SteadEventScore *score = scores->pdata[i];
      g_autofree char *text = stead_event_score_text (score);
      g_autofree char *share = stead_words_percent (score->score / score->out_of, 0);

      if (worked->len > 0)
        g_string_append_c (worked, '\n');
      /* Translators: "Nov 15: Placing, Maya R., 36 of 50", a percentage. */
      g_string_append_printf (worked, C_("scores", "%1$s = %2$s"), text, share);
    }
  return stead_why_new (g_strdup (_("Share of the points")),
                        _("Points reached ÷ points to win. Each part and each person has a line of its own; they are not put together. "
                          "Of many scores the newest stand here."),
                        g_string_free (worked, FALSE), _(NO_SOURCE));
}

static SteadWhy *
prepared_why (const SteadEventAnswer *self)
{
  GString *sum = g_string_new (NULL);
  double others = self->prepared_minutes;

  for (guint i = 0; i < self->team->len && i < self->minutes->len; i++)
    {
      double minutes = g_array_index (self->minutes, double, i);

      others -= minutes;
      if (minutes > 0)
        stead_hours_why_add (sum, ((const SteadEventPerson *) self->team->pdata[i])->name, (gint64) round (minutes));
    }
  if (others >= 0.5)
    stead_hours_why_add (sum, C_("in a sum", "others"), (gint64) round (others));
  return stead_why_new (g_strdup (_("Hours of preparation")),
                        _("Entries of hours that belong to this event, added up for each of the team, for others who "
                          "helped, and then for all."),
                        stead_hours_why_end (sum, (gint64) round (self->prepared_minutes)), _(NO_SOURCE));
}

GPtrArray *
stead_event_answer_whys (const SteadEventAnswer *self)
{
  GPtrArray *whys = stead_whys_new ();

  g_return_val_if_fail (self != NULL, whys);
  if (self->scores->len > 0)
    g_ptr_array_add (whys, scores_why (self->scores));
  if (self->prepared_minutes > 0)
    g_ptr_array_add (whys, prepared_why (self));
  return whys;
}
