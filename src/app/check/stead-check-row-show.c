/* stead-check-row-show.c - how a row of a checklist stands: what was read, what is to be done. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/check/stead-check-row-private.h"

#include "app/make/stead-make-parts.h"
#include "app/stead-ui.h"

static const char *
mark_of (SteadCheckedState state)
{
  switch (state)
    {
    case STEAD_CHECKED_MET:
      return "✓";
    case STEAD_CHECKED_FAILED:
      return "⚠";
    case STEAD_CHECKED_HANDLED:
      return "↻";
    case STEAD_CHECKED_LEFT_OUT:
      return "–";
    case STEAD_CHECKED_OPEN:
    case STEAD_CHECKED_AGAIN:
    case STEAD_CHECKED_UNSURE:
    default:
      return "○";
    }
}

static void
show_state (SteadCheckRow *self)
{
  SteadCheckedState state = self->line->state;
  GtkWidget *label = GTK_WIDGET (self->state);
  const char *style = state == STEAD_CHECKED_MET ? "good"
                      : state == STEAD_CHECKED_FAILED || state == STEAD_CHECKED_HANDLED ? "warn" : "soft";
  /* Translators: a sign, and how a check stands: "✓ Met at 8:15 AM." */
  g_autofree char *text = g_strdup_printf (C_("check", "%s %s"), mark_of (state), self->line->state_text);

  gtk_widget_remove_css_class (label, "good");
  gtk_widget_remove_css_class (label, "warn");
  gtk_widget_remove_css_class (label, "soft");
  gtk_widget_add_css_class (label, style);
  stead_make_say (self->state, text, FALSE);
}

static char *
read_text (const SteadCheckRead *read)
{
  GString *text = g_string_new (NULL);

  if (read->day != NULL)
    g_string_append_printf (text, "%s ", read->day);
  g_string_append_printf (text, "%s · %s", read->time, read->value);
  if (read->who != NULL)
    g_string_append_printf (text, " · %s", read->who);
  if (read->tool != NULL)
    g_string_append_printf (text, " · %s", read->tool);
  if (read->noted != NULL)
    g_string_append_printf (text, " · %s", read->noted);
  if (read->late)
    g_string_append_printf (text, " · %s", _("after signing"));
  return g_string_free (text, FALSE);
}

static void
add_read (SteadCheckRow        *self,
          const SteadCheckRead *read)
{
  gboolean bad = read->state == STEAD_READ_FAILED || read->state == STEAD_READ_HANDLED;
  g_autofree char *text = read_text (read);
  /* Translators: a reading, and what it means. */
  g_autofree char *whole = read->state == STEAD_READ_CORRECTED ? g_strdup_printf (_("%s — wrong, corrected"), text)
                           : read->sentence != NULL ? g_strdup_printf (C_("reading", "%s — %s"), text, read->sentence)
                           : g_strdup (text);

  gtk_box_append (GTK_BOX (self->reads),
                  stead_make_label (whole, read->state == STEAD_READ_CORRECTED ? "done" : bad ? "strong" : "soft"));
  if (read->done != NULL)
    {
      /* Translators: what was done about a reading out of its limit. */
      g_autofree char *done = g_strdup_printf (_("What was done: %s"), read->done);

      gtk_box_append (GTK_BOX (self->reads), stead_make_label (done, NULL));
    }
}

static void
show_reads (SteadCheckRow *self)
{
  stead_make_clear (self->reads);
  for (guint i = 0; i < self->line->reads->len; i++)
    add_read (self, self->line->reads->pdata[i]);
  gtk_widget_set_visible (self->reads, self->line->reads->len > 0);
}

static void
show_todo (SteadCheckRow *self)
{
  const SteadCheckRead *failed = stead_check_row_failed_read (self);

  gtk_widget_set_visible (self->todo_box, failed != NULL && !stead_check_row_is_signed (self));
  if (failed == NULL)
    return;
  stead_make_say (self->todo, failed->todo, FALSE);
  stead_make_say (self->todo_source, failed->todo_source, FALSE);
  gtk_widget_set_visible (self->did, failed->todo != NULL);
}

static void
show_why (SteadCheckRow *self)
{
  const SteadCheckedLine *line = self->line;
  g_autofree char *how = line->tool != NULL ? g_strdup_printf (C_("check", "%s, with %s, %s"), line->who, line->tool, line->often)
                                            : g_strdup_printf (C_("check without tool", "%s, %s"), line->who, line->often);

  stead_make_say (self->reason, line->reason, FALSE);
  stead_make_say (self->source, line->source, FALSE);
  stead_make_say (self->how, how, FALSE);
}

static void
name (GtkWidget  *widget,
      const char *format,
      int         number)
{
  g_autofree char *text = NULL;

#pragma GCC diagnostic push
#pragma GCC diagnostic ignored "-Wformat-nonliteral"
  text = g_strdup_printf (format, number);
#pragma GCC diagnostic pop
  stead_ui_name (widget, text);
}

static void
show_buttons (SteadCheckRow *self)
{
  SteadCheckedState state = self->line->state;
  gboolean closed = stead_check_row_is_signed (self), out = state == STEAD_CHECKED_LEFT_OUT;
  gboolean wanted = (stead_check_row_is_open (self) || self->again) && !closed;
  gboolean cooling = stead_list_line_is_cooling (self->line->line);
  gboolean has = stead_check_row_last_read (self) != NULL;

  wanted |= self->wrong_id != 0;
  gtk_widget_set_visible (GTK_WIDGET (self->entry), wanted && !out && (!cooling || self->wrong_id != 0)
                                                    && (!stead_check_row_is_tick (self)
                                                        || stead_check_entry_is_on_paper (self->entry)));
  gtk_widget_set_visible (self->done, wanted && !out && stead_check_row_is_tick (self));
  gtk_widget_set_visible (self->undone, wanted && !out && stead_check_row_is_tick (self));
  gtk_widget_set_visible (self->more, !wanted && !closed && !out && !cooling);
  gtk_widget_set_visible (self->pots, cooling && !out);
  gtk_widget_set_visible (self->correct, has);
  gtk_widget_set_visible (self->leave, !closed && !out && !has);
  gtk_widget_set_visible (self->take_back, !closed && out);
  gtk_button_set_label (GTK_BUTTON (self->correct),
                        self->wrong_id != 0 ? _("Correct nothing") : _("Correct the last reading"));
  /* A label that is set anew is what a screen reader says, until the name is given again. */
  name (self->correct, self->wrong_id != 0 ? _("Correct nothing at check %d") : _("Correct the last reading of check %d"),
        self->number);
}

/* What a screen reader says of a button belongs to one check. */
static void
name_all (SteadCheckRow *self)
{
  const struct { GtkWidget *widget; const char *format; } names[] = {
    { self->done, _("Check %d is done") },
    { self->undone, _("Check %d is not done") },
    { self->why, _("Why check %d?") },
    { self->more, _("Another reading of check %d") },
    { self->pots, _("Pots of check %d") },
    { self->leave, _("Leave out check %d…") },
    { self->leave_save, _("Leave out check %d") },
    { self->take_back, _("Take in check %d again") },
    { self->done_save, _("Save what was done about check %d") },
    { self->did, _("I did what check %d says") },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (names); i++)
    name (names[i].widget, names[i].format, self->number);
}

static void
label_fields (SteadCheckRow *self)
{
  g_autofree char *done = g_strdup_printf (_("What was done about check %d"), self->number);
  g_autofree char *leave = g_strdup_printf (_("Why check %d need not be done"), self->number);

  g_object_set (self->action, "label", done, NULL);
  g_object_set (self->leave_reason, "label", leave, NULL);
}

void
stead_check_row_show (SteadCheckRow          *self,
                      SteadCheckAnswer       *answer,
                      const SteadCheckedLine *line,
                      int                     number)
{
  g_autofree char *digits = g_strdup_printf ("%d", number);

  g_return_if_fail (STEAD_IS_CHECK_ROW (self));

  self->answer = answer;
  self->line = line;
  self->line_id = line->line->id;
  if (self->number != number)
    {
      self->number = number;
      name_all (self);
      label_fields (self);
    }
  gtk_label_set_text (self->digits, digits);
  gtk_label_set_text (self->text, line->text);
  stead_make_say (self->own, line->own, FALSE);
  show_state (self);
  show_reads (self);
  show_todo (self);
  show_why (self);
  stead_check_entry_show (self->entry, answer, line, number);
  stead_check_entry_set_corrects (self->entry, self->wrong_id != 0);
  show_buttons (self);
}

gint64
stead_check_row_get_id (SteadCheckRow *self)
{
  g_return_val_if_fail (STEAD_IS_CHECK_ROW (self), 0);
  return self->line_id;
}

gboolean
stead_check_row_is_open (SteadCheckRow *self)
{
  g_return_val_if_fail (STEAD_IS_CHECK_ROW (self), FALSE);
  return self->line->state != STEAD_CHECKED_MET && self->line->state != STEAD_CHECKED_LEFT_OUT;
}

void
stead_check_row_carry (SteadCheckRow *self,
                       SteadCheckRow *next)
{
  g_return_if_fail (STEAD_IS_CHECK_ROW (self) && STEAD_IS_CHECK_ROW (next));
  stead_check_entry_carry (self->entry, next->entry);
}

void
stead_check_row_focus (SteadCheckRow *self)
{
  g_return_if_fail (STEAD_IS_CHECK_ROW (self));

  if (gtk_widget_get_visible (GTK_WIDGET (self->entry)))
    stead_check_entry_focus (self->entry);
  else if (gtk_widget_get_visible (self->done))
    gtk_widget_grab_focus (self->done);
  else if (gtk_widget_get_visible (self->pots))
    gtk_widget_grab_focus (self->pots);
}
