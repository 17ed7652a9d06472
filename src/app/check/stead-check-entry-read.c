/* stead-check-entry-read.c - what was typed about one reading: taken, asked about, or found wanting. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/check/stead-check-entry-private.h"

#include "app/make/stead-make-parts.h"
#include "app/stead-ui.h"

/* The number as typed, and the scale: as typed with it, else that of the farm, else what was answered. */
static gboolean
read_value (SteadCheckEntry      *self,
            const SteadListLine  *line,
            double               *out_value,
            const char          **out_unit,
            GError              **error)
{
  const char *text = stead_field_get_text (self->value);
  const SteadUnit *usual = stead_unit_default (STEAD_DIMENSION_TEMPERATURE, self->units), *unit = NULL;
  double base;

  if (!stead_check_entry_is_warmth (line))
    {
      *out_unit = line->unit;
      return stead_number_parse (text, out_value, error);
    }
  if (!stead_quantity_parse (text, STEAD_DIMENSION_TEMPERATURE, usual, &base, &unit, error))
    return FALSE;
  *out_value = stead_quantity_from_base (base, unit);
  *out_unit = self->scale != NULL ? self->scale : g_str_equal (unit->id, "degC") ? "C" : "F";
  return TRUE;
}

/* A reading that is typed in so long after it was taken says so. */
#define LATE_S 1800

/* Now, or a time of the day of the list; what was read after midnight is of the next day.  Of a
 * list of an earlier day the time is asked for: it was taken down on paper. */
static gboolean
read_time (SteadCheckEntry       *self,
           SteadCheckAnswer      *answer,
           gint64                 now,
           SteadShown            *shown)
{
  gint64 midnight = stead_time_midnight (answer->list->day);
  g_autoptr(GError) error = NULL;

  shown->at = now;
  if (stead_field_is_empty (self->at) && self->corrects)
    {
      shown->at = STEAD_TIME_NONE;
      shown->noted_at = now;
      return TRUE;
    }
  if (stead_field_is_empty (self->at) && self->on_paper)
    {
      stead_field_set_error (self->at, _("The list is of an earlier day. Enter at what time it was read."));
      gtk_widget_grab_focus (GTK_WIDGET (self->at));
      return FALSE;
    }
  if (stead_field_is_empty (self->at))
    return TRUE;
  if (!stead_make_read_clock (stead_field_get_text (self->at), answer->list->day, &shown->at, &error))
    {
      stead_field_set_error (self->at, error->message);
      return FALSE;
    }
  if (shown->at < midnight + NIGHT_S && shown->at + DAY_S <= now)
    shown->at += DAY_S;
  shown->noted_at = shown->at + LATE_S < now ? now : 0;
  return TRUE;
}

/* Initials that stand on the sheet; without any it is who was chosen for the whole list. */
static gboolean
read_who (SteadCheckEntry  *self,
          SteadCheckAnswer *answer,
          SteadShown       *shown)
{
  g_autoptr(GError) error = NULL;

  shown->person_id = 0;
  if (!gtk_widget_get_visible (GTK_WIDGET (self->who)) || stead_field_is_empty (self->who))
    return TRUE;
  shown->person_id = stead_check_find_person (answer->people, stead_field_get_text (self->who), &error);
  if (shown->person_id != 0)
    return TRUE;
  stead_field_set_error (self->who, error->message);
  gtk_widget_grab_focus (GTK_WIDGET (self->who));
  return FALSE;
}

static gboolean
read_number (SteadField *field,
             double     *out)
{
  g_autoptr(GError) error = NULL;

  if (stead_field_is_empty (field) || stead_number_parse (stead_field_get_text (field), out, &error))
    return TRUE;
  stead_field_set_error (field, error->message);
  return FALSE;
}

/* Return leads on to what is still to be typed. */
static gboolean
want (SteadField *field,
      const char *message)
{
  stead_field_set_error (field, message);
  gtk_widget_grab_focus (GTK_WIDGET (field));
  return FALSE;
}

/* @warmth_f: what the thermometer shows in it. */
static gboolean
read_solution (SteadCheckEntry     *self,
               const SteadListLine *line,
               double               warmth_f,
               SteadSolution       *out)
{
  gboolean quat = g_strcmp0 (line->subject, "quat") == 0;

  *out = (SteadSolution) { line->subject, NAN, NAN, warmth_f, NAN };
  if (!stead_list_line_is_mixed (line))
    return TRUE;
  if (!read_number (self->strength, &out->strength_mgl)
      || !read_number (self->second, quat ? &out->hardness_mgl : &out->ph))
    return FALSE;
  if (!quat && isnan (out->strength_mgl))
    return want (self->strength, _("Dip a test strip, and enter what it shows."));
  if (!quat && isnan (out->ph))
    return want (self->second, _("Dip a pH strip, and enter what it shows. How well it works goes by it."));
  return TRUE;
}

static gboolean
ask_about (SteadCheckEntry         *self,
           const SteadCheckVerdict *verdict)
{
  if (verdict->as_typed == NULL)
    {
      gboolean of_time = verdict->judged.odd == STEAD_CHECK_ODD_FUTURE || verdict->judged.odd == STEAD_CHECK_ODD_BEFORE;

      stead_field_set_error (of_time ? self->at : self->value, verdict->question);
      return FALSE;
    }
  self->other = g_strcmp0 (verdict->judged.other_unit, "C") == 0 ? "C" : "F";
  gtk_label_set_text (self->question, verdict->question);
  gtk_button_set_label (GTK_BUTTON (self->as_typed), verdict->as_typed);
  gtk_button_set_label (GTK_BUTTON (self->otherwise), verdict->otherwise);
  stead_ui_name (self->as_typed, verdict->as_typed);
  stead_ui_name (self->otherwise, verdict->otherwise);
  gtk_widget_show (self->ask);
  gtk_widget_grab_focus (self->otherwise);
  return FALSE;
}

/* Whether the reading is to be kept as it is. */
static gboolean
is_settled (SteadCheckEntry         *self,
            const SteadCheckVerdict *verdict,
            double                   held_s)
{
  if (verdict->question != NULL)
    return ask_about (self, verdict);
  if (verdict->judged.outcome == STEAD_CHECK_IF_HELD && isnan (held_s))
    {
      stead_field_set_error (self->held, _("Hot enough. How long did it stay so? Enter 0 if nobody timed it."));
      gtk_widget_grab_focus (GTK_WIDGET (self->held));
      return FALSE;
    }
  return TRUE;
}

gboolean
stead_check_entry_read (SteadCheckEntry        *self,
                        SteadCheckAnswer       *answer,
                        const SteadCheckedLine *line,
                        SteadShown             *shown,
                        SteadSolution          *solution)
{
  gint64 now = g_get_real_time () / G_USEC_PER_SEC;
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadCheckVerdict) verdict = NULL;
  const char *unit = NULL;
  double value = NAN, held = NAN;

  g_return_val_if_fail (STEAD_IS_CHECK_ENTRY (self), FALSE);

  if (stead_field_is_empty (self->value))
    {
      stead_field_set_error (self->value, _("Enter what the instrument shows."));
      return FALSE;
    }
  if (!read_value (self, line->line, &value, &unit, &error))
    {
      stead_field_set_error (self->value, error->message);
      return FALSE;
    }
  if (!stead_field_is_empty (self->held) && !stead_number_parse (stead_field_get_text (self->held), &held, &error))
    {
      stead_field_set_error (self->held, error->message);
      return FALSE;
    }
  if (!read_time (self, answer, now, shown) || !read_who (self, answer, shown))
    return FALSE;
  if (!read_solution (self, line->line, g_strcmp0 (unit, "C") == 0 ? stead_fahrenheit_from_celsius (value) : value, solution))
    return FALSE;
  if (line->known || !stead_list_line_is_cooling (line->line))
    verdict = stead_check_answer_judge (answer, line, value, unit, solution, held, shown->at, self->confirmed, &error);
  if (stead_list_line_is_cooling (line->line))
    {
      /* Its limits are judged with the pot's other readings; an odd number is asked about all the same. */
      if (verdict != NULL && verdict->question != NULL)
        return ask_about (self, verdict);
    }
  else if (verdict == NULL || !is_settled (self, verdict, held))
    {
      if (verdict == NULL)
        stead_field_set_error (self->value, error->message);
      return FALSE;
    }
  shown->scale = stead_check_entry_is_warmth (line->line) ? unit[0] : 0;
  shown->value = shown->scale == 'F' ? (value - 32) / 1.8 : value;
  shown->held_s = held > 0 ? held : NAN;
  return TRUE;
}

gboolean
stead_check_entry_read_tick (SteadCheckEntry  *self,
                             SteadCheckAnswer *answer,
                             SteadShown       *shown)
{
  gint64 now = g_get_real_time () / G_USEC_PER_SEC;

  g_return_val_if_fail (STEAD_IS_CHECK_ENTRY (self), FALSE);

  if (!self->on_paper)
    {
      shown->at = now;
      return TRUE;
    }
  return read_time (self, answer, now, shown) && read_who (self, answer, shown);
}
