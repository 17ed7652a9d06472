/* stead-check-row.c - one line of a checklist: what to check, why, what was read, and what was done.
 *
 * A reading is judged before it is kept: an odd one is asked about, and one that must
 * hold for a time asks for how long.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/check/stead-check-row.h"

#include "app/check/stead-check-entry.h"
#include "app/make/stead-make-parts.h"
#include "app/stead-field.h"
#include "app/stead-ui.h"
#include "app/stead-wrap-layout.h"

struct _SteadCheckRow
{
  GtkWidget               parent_instance;

  SteadDesk              *desk;
  SteadPersonPick        *person;       /* of the view */
  SteadPick              *instrument;   /* likewise */
  SteadCheckAnswer       *answer;       /* of the view, as last shown */
  const SteadCheckedLine *line;
  gint64                  line_id;
  int                     number;
  gboolean                again;        /* one more reading is wanted of a line that is met */
  gint64                  wrong_id;     /* the reading that is corrected; 0: none */

  GtkLabel               *digits, *text, *own, *state;
  GtkWidget              *reads, *todo_box, *done, *undone, *links, *why_box, *leave_box;
  GtkWidget              *why, *more, *correct, *leave, *pots, *take_back, *did, *leave_save, *done_save;
  GtkLabel               *todo, *todo_source, *reason, *source, *how;
  SteadField             *action, *leave_reason;
  SteadCheckEntry        *entry;
};

enum { SAVED, POTS, N_SIGNALS };

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (SteadCheckRow, stead_check_row, GTK_TYPE_WIDGET)

static gboolean
is_tick (const SteadCheckedLine *line)
{
  return g_str_equal (line->line->measure, STEAD_MEASURE_DONE);
}

static gboolean
is_signed (SteadCheckRow *self)
{
  return self->answer->list->signed_at != STEAD_TIME_NONE;
}

static const SteadCheckRead *
last_read (const SteadCheckedLine *line)
{
  for (guint i = line->reads->len; i-- > 0;)
    {
      const SteadCheckRead *read = line->reads->pdata[i];

      if (read->state != STEAD_READ_CORRECTED)
        return read;
    }
  return NULL;
}

static const SteadCheckRead *
failed_read (const SteadCheckedLine *line)
{
  for (guint i = line->reads->len; i-- > 0;)
    {
      const SteadCheckRead *read = line->reads->pdata[i];

      if (read->state == STEAD_READ_FAILED)
        return read;
    }
  return NULL;
}

/* --- writing down --------------------------------------------------------------------- */

static gboolean
reading_act (SteadStore *store,
             gpointer    data,
             GError    **error)
{
  SteadShown *shown = data;

  if (shown->corrects_id != 0)
    return stead_shown_repo_correct (store, shown->corrects_id, shown, error);
  return stead_shown_repo_add (store, shown, error);
}

/* An air thermometer cannot show what a probe does: only lines of a probe take the one that was chosen. */
static gint64
instrument_of (SteadCheckRow *self)
{
  gint64 chosen = g_str_equal (self->line->line->tool, "probe") ? stead_pick_get (self->instrument) : 0;

  return chosen != 0 ? chosen : self->line->line->instrument_id;
}

static gboolean
write_reading (SteadCheckRow  *self,
               SteadShown     *shown,
               const char     *value,
               GError        **error)
{
  /* Translators: a step that can be undone: a reading "158 °F", the number of a check, the name of a checklist. */
  g_autofree char *step = g_strdup_printf (_("%s at check %d of “%s”"), value, self->number, self->answer->list->name);
  gboolean saved;

  shown->line_id = self->line_id;
  shown->person_id = stead_person_pick_get (self->person);
  shown->instrument_id = is_tick (self->line) ? 0 : instrument_of (self);
  shown->corrects_id = self->wrong_id;
  /* A correction puts the kind of the wrong one in its place. */
  shown->kind = g_strdup (self->line->line->measure);
  saved = stead_desk_act (self->desk, step, reading_act, shown, error);
  g_clear_pointer (&shown->kind, g_free);
  return saved;
}

static void
saved (SteadCheckRow *self)
{
  self->again = FALSE;
  self->wrong_id = 0;
  stead_check_row_show (self, self->answer, self->line, self->number);
  g_signal_emit (self, signals[SAVED], 0);
}

static void
read_cb (SteadCheckRow *self)
{
  SteadShown shown = { .at = STEAD_TIME_NONE };
  g_autofree char *value = NULL;
  g_autoptr(GError) error = NULL;

  if (!stead_check_entry_read (self->entry, self->answer, self->line, &shown))
    return;
  shown.kind = (char *) self->line->line->measure;
  value = stead_check_value_text (&shown, self->line->line->unit, self->answer->farm->units);
  if (!write_reading (self, &shown, value, &error))
    {
      stead_check_entry_complain (self->entry, error->message);
      return;
    }
  stead_check_entry_clear (self->entry);
  saved (self);
}

static void
tick (SteadCheckRow *self,
      gboolean       done)
{
  SteadShown shown = { .at = stead_time_now (stead_desk_get_store (self->desk)), .value = done ? 1 : 0 };
  g_autoptr(GError) error = NULL;

  /* Translators: what was noted of a check that is ticked. */
  if (write_reading (self, &shown, done ? C_("check", "done") : C_("check", "not done"), &error))
    saved (self);
  else
    stead_desk_say (self->desk, error->message, FALSE);
}

static void
done_cb (SteadCheckRow *self)
{
  tick (self, TRUE);
}

static void
undone_cb (SteadCheckRow *self)
{
  tick (self, FALSE);
}

static gboolean
action_act (SteadStore *store,
            gpointer    data,
            GError    **error)
{
  return stead_done_repo_add (store, data, error);
}

static void
write_action (SteadCheckRow *self,
              const char    *text)
{
  const SteadCheckRead *read = failed_read (self->line);
  SteadDone done = { .at = stead_time_now (stead_desk_get_store (self->desk)), .text = (char *) text,
                     .person_id = stead_person_pick_get (self->person) };
  g_autoptr(GError) error = NULL;
  /* Translators: a step that can be undone: the number of a check, the name of a checklist. */
  g_autofree char *step = g_strdup_printf (_("what was done about check %d of “%s”"), self->number,
                                           self->answer->list->name);

  if (read == NULL)
    return;
  done.reading_id = read->shown->id;
  if (!stead_desk_act (self->desk, step, action_act, &done, &error))
    {
      stead_field_set_error (self->action, error->message);
      return;
    }
  stead_field_set_text (self->action, "");
  /* It is read again, until it is met. */
  stead_check_row_focus (self);
}

static void
done_save_cb (SteadCheckRow *self)
{
  g_autofree char *text = g_strdup (stead_field_get_text (self->action));

  if (stead_field_is_empty (self->action))
    stead_field_set_error (self->action, _("Write down what was done."));
  else
    write_action (self, text);
}

static void
did_cb (SteadCheckRow *self)
{
  const SteadCheckRead *read = failed_read (self->line);
  g_autofree char *text = read != NULL ? g_strdup (read->todo) : NULL;

  if (text != NULL)
    write_action (self, text);
}

typedef struct
{
  gint64      line_id;
  const char *reason;   /* (nullable) */
} LeaveOut;

static gboolean
leave_act (SteadStore *store,
           gpointer    data,
           GError    **error)
{
  const LeaveOut *leave = data;

  return stead_check_repo_leave_out (store, leave->line_id, leave->reason, error);
}

static void
leave_out (SteadCheckRow *self,
           const char    *reason)
{
  LeaveOut leave = { self->line_id, reason };
  g_autoptr(GError) error = NULL;
  /* Translators: a step that can be undone: the number of a check, the name of a checklist. */
  g_autofree char *step = reason != NULL
    ? g_strdup_printf (_("leaving out check %d of “%s”"), self->number, self->answer->list->name)
    : g_strdup_printf (_("taking back check %d of “%s”"), self->number, self->answer->list->name);

  if (!stead_desk_act (self->desk, step, leave_act, &leave, &error))
    {
      stead_field_set_error (self->leave_reason, error->message);
      return;
    }
  gtk_widget_hide (self->leave_box);
  saved (self);
}

static void
leave_save_cb (SteadCheckRow *self)
{
  g_autofree char *reason = g_strdup (stead_field_get_text (self->leave_reason));

  if (stead_field_is_empty (self->leave_reason))
    stead_field_set_error (self->leave_reason, _("Write down why it need not be done."));
  else
    leave_out (self, reason);
}

static void
take_back_cb (SteadCheckRow *self)
{
  leave_out (self, NULL);
}

/* --- links ------------------------------------------------------------------------------- */

static void
why_cb (SteadCheckRow *self)
{
  gtk_widget_set_visible (self->why_box, !gtk_widget_get_visible (self->why_box));
}

static void
leave_cb (SteadCheckRow *self)
{
  gtk_widget_set_visible (self->leave_box, !gtk_widget_get_visible (self->leave_box));
  if (gtk_widget_get_visible (self->leave_box))
    gtk_widget_grab_focus (GTK_WIDGET (self->leave_reason));
}

static void
more_cb (SteadCheckRow *self)
{
  self->again = TRUE;
  self->wrong_id = 0;
  stead_check_row_show (self, self->answer, self->line, self->number);
  stead_check_row_focus (self);
}

static void
correct_cb (SteadCheckRow *self)
{
  const SteadCheckRead *read = last_read (self->line);

  self->wrong_id = self->wrong_id == 0 && read != NULL ? read->shown->id : 0;
  stead_check_row_show (self, self->answer, self->line, self->number);
  if (self->wrong_id != 0)
    stead_check_row_focus (self);
}

static void
pots_cb (SteadCheckRow *self)
{
  g_signal_emit (self, signals[POTS], 0);
}

/* --- building ------------------------------------------------------------------------------ */

static GtkLabel *
add_label (GtkWidget  *box,
           const char *style)
{
  GtkWidget *label = stead_make_label ("", style);

  gtk_box_append (GTK_BOX (box), label);
  return GTK_LABEL (label);
}

static GtkWidget *
add_button (SteadCheckRow *self,
            GtkWidget     *box,
            const char    *label,
            const char    *style,
            void         (*clicked) (SteadCheckRow *))
{
  GtkWidget *button = gtk_button_new_with_label (label);

  if (style != NULL)
    gtk_widget_add_css_class (button, style);
  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  g_signal_connect_swapped (button, "clicked", G_CALLBACK (clicked), self);
  gtk_box_append (GTK_BOX (box), button);
  return button;
}

static GtkWidget *
new_row (void)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);

  gtk_widget_set_layout_manager (row, stead_wrap_layout_new ());
  return row;
}

static void
make_todo (SteadCheckRow *self,
           GtkWidget     *box)
{
  GtkWidget *buttons = new_row ();

  self->todo_box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  self->todo = add_label (self->todo_box, "caution");
  self->todo_source = add_label (self->todo_box, "soft");
  gtk_widget_add_css_class (GTK_WIDGET (self->todo_source), "small");
  self->action = STEAD_FIELD (stead_field_new (_("What was done"), STEAD_FIELD_TEXT));
  g_signal_connect_swapped (self->action, "activate", G_CALLBACK (done_save_cb), self);
  gtk_box_append (GTK_BOX (self->todo_box), GTK_WIDGET (self->action));
  self->done_save = add_button (self, buttons, _("Save what was done"), NULL, done_save_cb);
  self->did = add_button (self, buttons, _("I did what it says"), NULL, did_cb);
  gtk_box_append (GTK_BOX (self->todo_box), buttons);
  gtk_box_append (GTK_BOX (box), self->todo_box);
}

static void
make_links (SteadCheckRow *self,
            GtkWidget     *box)
{
  self->links = new_row ();
  self->done = add_button (self, self->links, C_("check", "Done"), NULL, done_cb);
  self->undone = add_button (self, self->links, C_("check", "Not done"), NULL, undone_cb);
  self->why = add_button (self, self->links, _("Why?"), "link", why_cb);
  self->more = add_button (self, self->links, _("Another reading"), "link", more_cb);
  self->pots = add_button (self, self->links, _("Pots and their curves"), "link", pots_cb);
  self->correct = add_button (self, self->links, _("Correct the last reading"), "link", correct_cb);
  self->leave = add_button (self, self->links, _("Leave it out…"), "link", leave_cb);
  self->take_back = add_button (self, self->links, _("Take it in again"), "link", take_back_cb);
  gtk_box_append (GTK_BOX (box), self->links);
}

static void
make_why (SteadCheckRow *self,
          GtkWidget     *box)
{
  self->why_box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 3);
  self->reason = add_label (self->why_box, NULL);
  self->how = add_label (self->why_box, "soft");
  self->source = add_label (self->why_box, "soft");
  gtk_widget_add_css_class (GTK_WIDGET (self->source), "small");
  gtk_widget_hide (self->why_box);
  gtk_box_append (GTK_BOX (box), self->why_box);
}

static void
make_leave (SteadCheckRow *self,
            GtkWidget     *box)
{
  GtkWidget *buttons = new_row ();

  self->leave_box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  self->leave_reason = STEAD_FIELD (stead_field_new (_("Why it need not be done"), STEAD_FIELD_TEXT));
  g_signal_connect_swapped (self->leave_reason, "activate", G_CALLBACK (leave_save_cb), self);
  gtk_box_append (GTK_BOX (self->leave_box), GTK_WIDGET (self->leave_reason));
  self->leave_save = add_button (self, buttons, _("Leave it out"), NULL, leave_save_cb);
  gtk_box_append (GTK_BOX (self->leave_box), buttons);
  gtk_widget_hide (self->leave_box);
  gtk_box_append (GTK_BOX (box), self->leave_box);
}

static void
stead_check_row_init (SteadCheckRow *self)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 3);

  self->digits = add_label (row, "number");
  gtk_label_set_width_chars (self->digits, 3);
  gtk_label_set_xalign (self->digits, 1);
  gtk_widget_set_valign (GTK_WIDGET (self->digits), GTK_ALIGN_START);
  gtk_widget_set_hexpand (box, TRUE);
  self->text = add_label (box, "strong");
  self->own = add_label (box, NULL);
  self->state = add_label (box, NULL);
  self->reads = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  gtk_box_append (GTK_BOX (box), self->reads);
  make_todo (self, box);
  self->entry = STEAD_CHECK_ENTRY (stead_check_entry_new ());
  g_signal_connect_swapped (self->entry, "read", G_CALLBACK (read_cb), self);
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->entry));
  make_links (self, box);
  make_why (self, box);
  make_leave (self, box);
  gtk_box_append (GTK_BOX (row), box);
  gtk_widget_set_parent (row, GTK_WIDGET (self));
}

static void
stead_check_row_dispose (GObject *object)
{
  SteadCheckRow *self = STEAD_CHECK_ROW (object);

  stead_ui_drop_children (GTK_WIDGET (object));
  g_clear_object (&self->desk);
  G_OBJECT_CLASS (stead_check_row_parent_class)->dispose (object);
}

static void
stead_check_row_class_init (SteadCheckRowClass *klass)
{
  GType type = G_TYPE_FROM_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = stead_check_row_dispose;
  gtk_widget_class_set_css_name (GTK_WIDGET_CLASS (klass), "checkrow");
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
  signals[SAVED] = g_signal_new ("saved", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[POTS] = g_signal_new ("pots", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
}

GtkWidget *
stead_check_row_new (SteadDesk       *desk,
                     SteadPersonPick *person,
                     SteadPick       *instrument)
{
  SteadCheckRow *self = g_object_new (STEAD_TYPE_CHECK_ROW, NULL);

  self->desk = g_object_ref (desk);
  self->person = person;
  self->instrument = instrument;
  return GTK_WIDGET (self);
}

/* --- showing ---------------------------------------------------------------------------------- */

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
  const SteadCheckRead *failed = failed_read (self->line);

  gtk_widget_set_visible (self->todo_box, failed != NULL && !is_signed (self));
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
show_buttons (SteadCheckRow *self)
{
  SteadCheckedState state = self->line->state;
  gboolean closed = is_signed (self), out = state == STEAD_CHECKED_LEFT_OUT;
  gboolean wanted = (stead_check_row_is_open (self) || self->again) && !closed;
  gboolean cooling = stead_list_line_is_cooling (self->line->line);
  gboolean has = last_read (self->line) != NULL;

  wanted |= self->wrong_id != 0;
  gtk_widget_set_visible (GTK_WIDGET (self->entry), wanted && !out && !is_tick (self->line) && (!cooling || self->wrong_id != 0));
  gtk_widget_set_visible (self->done, wanted && !out && is_tick (self->line));
  gtk_widget_set_visible (self->undone, wanted && !out && is_tick (self->line));
  gtk_widget_set_visible (self->more, !wanted && !closed && !out && !cooling);
  gtk_widget_set_visible (self->pots, cooling && !out);
  gtk_widget_set_visible (self->correct, has);
  gtk_widget_set_visible (self->leave, !closed && !out && !has);
  gtk_widget_set_visible (self->take_back, !closed && out);
  gtk_button_set_label (GTK_BUTTON (self->correct),
                        self->wrong_id != 0 ? _("Correct nothing") : _("Correct the last reading"));
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
    { self->correct, _("Correct the last reading of check %d") },
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
