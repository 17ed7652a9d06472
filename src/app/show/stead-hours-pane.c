/* stead-hours-pane.c - the hours of a week: timers, known work, entries, and the advisor's check. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/show/stead-hours-pane.h"

#include "answer/stead-hours-answer.h"
#include "app/make/stead-make-parts.h"
#include "app/sell/stead-sell-parts.h"
#include "app/show/stead-hours-check-dialog.h"
#include "app/show/stead-hours-dialog.h"
#include "app/show/stead-known-dialog.h"
#include "app/show/stead-show-picks.h"
#include "app/show/stead-timer-box.h"
#include "app/stead-paper-dialog.h"
#include "app/stead-why-box.h"
#include "app/stead-wrap-layout.h"

struct _SteadHoursPane
{
  SteadPane      parent_instance;

  SteadDay       week;      /* its Monday; STEAD_DAY_NONE: that of today */
  gint64         person_id; /* 0: everybody */

  SteadPick     *who;
  GtkLabel      *title;
  GtkWidget     *known;
  SteadTimerBox *timers;
  SteadTable    *table;
  SteadWhyBox   *whys;
};

G_DEFINE_FINAL_TYPE (SteadHoursPane, stead_hours_pane, STEAD_TYPE_PANE)

#define KNOWN_DAYS 14   /* work of so many days is offered */

/* --- the table ------------------------------------------------------------------------- */

static const SteadWorkSpan *
span_of (gconstpointer item)
{
  return stead_row_get (STEAD_ROW ((gpointer) item));
}

static char *
day_text (gpointer item,
          gpointer data)
{
  return stead_day_format (span_of (item)->day, STEAD_DAY_STYLE_SHORT);
}

static char *
who_text (gpointer item,
          gpointer data)
{
  return g_strdup (span_of (item)->person_name);
}

static char *
from_text (gpointer item,
           gpointer data)
{
  return stead_hours_clock (span_of (item)->from_at);
}

static char *
to_text (gpointer item,
         gpointer data)
{
  return stead_hours_clock (span_of (item)->to_at);
}

static char *
hours_text (gpointer item,
            gpointer data)
{
  return stead_hours_words ((gint64) round (span_of (item)->minutes));
}

static char *
duty_text (gpointer item,
           gpointer data)
{
  return g_strdup (span_of (item)->duty);
}

static char *
about_text (gpointer item,
            gpointer data)
{
  return g_strdup (span_of (item)->about != NULL ? span_of (item)->about : "");
}

static char *
state_text (gpointer item,
            gpointer data)
{
  g_autofree char *state = stead_hours_state (span_of (item));

  if (!span_of (item)->paid)
    return g_steal_pointer (&state);
  /* Translators: the state of an entry of hours: "checked, paid work". */
  return g_strdup_printf (C_("hours", "%s, paid work"), state);
}

static int
compare_days (gconstpointer a,
              gconstpointer b,
              gpointer      data)
{
  return (span_of (a)->day > span_of (b)->day) - (span_of (a)->day < span_of (b)->day);
}

static int
compare_people (gconstpointer a,
                gconstpointer b,
                gpointer      data)
{
  return g_utf8_collate (span_of (a)->person_name, span_of (b)->person_name);
}

static int
compare_hours (gconstpointer a,
               gconstpointer b,
               gpointer      data)
{
  return (span_of (a)->minutes > span_of (b)->minutes) - (span_of (a)->minutes < span_of (b)->minutes);
}

/* --- buttons ---------------------------------------------------------------------------- */

static void
activate_cb (gpointer item,
             gpointer data)
{
  stead_hours_dialog_show_span (GTK_WIDGET (data), stead_pane_get_desk (data), span_of (item)->id);
}

static SteadDay
day_for_entry (SteadHoursPane *self)
{
  SteadDay today = stead_store_get_today (stead_pane_get_store (STEAD_PANE (self)));

  return CLAMP (today, self->week, self->week + 6);
}

static void
enter_cb (SteadPane *pane)
{
  SteadHoursPane *self = STEAD_HOURS_PANE (pane);

  stead_hours_dialog_show (GTK_WIDGET (pane), stead_pane_get_desk (pane), self->person_id, day_for_entry (self));
}

static void
change_cb (SteadPane *pane)
{
  const SteadWorkSpan *span = stead_pane_get_chosen (pane);

  if (span != NULL)
    stead_hours_dialog_show_span (GTK_WIDGET (pane), stead_pane_get_desk (pane), span->id);
}

static void
check_cb (SteadPane *pane)
{
  SteadHoursPane *self = STEAD_HOURS_PANE (pane);

  stead_hours_check_dialog_show (GTK_WIDGET (pane), stead_pane_get_desk (pane), self->week, self->week + 6,
                                 self->person_id);
}

static void
known_cb (SteadPane *pane)
{
  SteadDay today = stead_store_get_today (stead_pane_get_store (pane));

  stead_known_dialog_show (GTK_WIDGET (pane), stead_pane_get_desk (pane), today - KNOWN_DAYS, today);
}

static char *
name_of (SteadStore *store,
         gint64      person_id)
{
  g_autoptr(GPtrArray) people = stead_person_repo_list (store, NULL);

  for (guint i = 0; people != NULL && i < people->len; i++)
    if (((const SteadPerson *) people->pdata[i])->id == person_id)
      return g_strdup (((const SteadPerson *) people->pdata[i])->name);
  return NULL;
}

static void
print_cb (SteadPane *pane)
{
  SteadHoursPane *self = STEAD_HOURS_PANE (pane);

  stead_paper_dialog_show_days (GTK_WIDGET (pane), stead_pane_get_desk (pane), "hours-week", NULL, self->week,
                                self->week + 6);
}

/* Of who is shown, or of whose row is chosen. */
static void
print_person_cb (SteadPane *pane)
{
  SteadHoursPane *self = STEAD_HOURS_PANE (pane);
  const SteadWorkSpan *span = self->person_id == 0 ? stead_pane_get_chosen (pane) : NULL;
  g_autofree char *name = NULL;

  if (self->person_id == 0 && span == NULL)
    return;
  name = span != NULL ? g_strdup (span->person_name) : name_of (stead_pane_get_store (pane), self->person_id);
  stead_paper_dialog_show (GTK_WIDGET (pane), stead_pane_get_desk (pane), "hours-person", name);
}

static void
move (SteadHoursPane *self,
      int             days)
{
  SteadPane *pane = STEAD_PANE (self);

  self->week += days;
  stead_pane_refresh (pane, stead_pane_get_desk (pane));
}

static void
who_cb (SteadHoursPane *self)
{
  self->person_id = stead_pick_get (self->who);
  move (self, 0);
}

static void
earlier_cb (SteadHoursPane *self)
{
  move (self, -7);
}

static void
later_cb (SteadHoursPane *self)
{
  move (self, 7);
}

/* --- the pane ------------------------------------------------------------------------------- */

static void
show_week (SteadHoursPane *self)
{
  g_autofree char *from = stead_day_format (self->week, STEAD_DAY_STYLE_SHORT);
  g_autofree char *to = stead_day_format (self->week + 6, STEAD_DAY_STYLE_MEDIUM);
  /* Translators: the first and the last day of a week. */
  g_autofree char *text = g_strdup_printf (C_("week", "%1$s – %2$s"), from, to);

  gtk_label_set_text (self->title, text);
}

static void
show_people (SteadHoursPane *self)
{
  g_autoptr(GPtrArray) people = stead_person_repo_list (stead_pane_get_store (STEAD_PANE (self)), NULL);

  stead_pick_clear (self->who);
  stead_pick_append (self->who, 0, C_("whose hours", "Everybody"));
  for (guint i = 0; people != NULL && i < people->len; i++)
    {
      const SteadPerson *person = people->pdata[i];

      if (person->left_on == STEAD_DAY_NONE || person->id == self->person_id)
        stead_pick_append (self->who, person->id, person->name);
    }
  stead_pick_show (self->who, self->person_id);
}

static void
show_known (SteadHoursPane *self)
{
  SteadStore *store = stead_pane_get_store (STEAD_PANE (self));
  SteadDay today = stead_store_get_today (store);
  g_autoptr(GPtrArray) drafts = stead_work_repo_drafts (store, today - KNOWN_DAYS, today, NULL);
  guint n = drafts != NULL ? drafts->len : 0;
  g_autofree char *text = g_strdup_printf (_("Known work… (%u)"), n);

  gtk_button_set_label (GTK_BUTTON (self->known), text);
  gtk_widget_set_visible (self->known, n > 0);
}

static void
stead_hours_pane_refresh (SteadPane *pane)
{
  SteadHoursPane *self = STEAD_HOURS_PANE (pane);
  SteadStore *store = stead_pane_get_store (pane);
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadHoursAnswer) answer = NULL;
  g_autoptr(GListModel) rows = NULL;
  g_autoptr(GPtrArray) whys = NULL;

  if (self->week == STEAD_DAY_NONE)
    self->week = stead_hours_week (stead_store_get_today (store));
  answer = stead_hours_answer_new (store, self->week, self->week + 6, self->person_id, &error);
  stead_pane_say (pane, answer != NULL ? answer->sentence : NULL, error);
  if (answer == NULL)
    return;
  whys = stead_hours_answer_whys (answer);
  stead_why_box_set (self->whys, whys);
  rows = stead_rows_from_array (g_steal_pointer (&answer->spans), (GDestroyNotify) stead_work_span_free);
  stead_table_set_model (self->table, rows);
  show_week (self);
  show_people (self);
  show_known (self);
  stead_timer_box_show (self->timers, stead_pane_get_desk (pane));
}

static void
stead_hours_pane_show (SteadPane   *pane,
                       SteadTarget  target,
                       gint64       id)
{
  STEAD_HOURS_PANE (pane)->person_id = id;
}

static void
stead_hours_pane_class_init (SteadHoursPaneClass *klass)
{
  STEAD_PANE_CLASS (klass)->refresh = stead_hours_pane_refresh;
  STEAD_PANE_CLASS (klass)->show = stead_hours_pane_show;
}

static GtkWidget *
add_button (SteadHoursPane *self,
            GtkWidget      *row,
            const char     *label,
            GCallback       clicked)
{
  GtkWidget *button = gtk_button_new_with_label (label);

  g_signal_connect_swapped (button, "clicked", clicked, self);
  gtk_widget_set_valign (button, GTK_ALIGN_END);
  gtk_box_append (GTK_BOX (row), button);
  return button;
}

static void
make_head (SteadHoursPane *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6), *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);

  gtk_widget_set_layout_manager (row, g_object_new (STEAD_TYPE_WRAP_LAYOUT, NULL));
  self->who = STEAD_PICK (stead_pick_new (_("Whose hours")));
  g_signal_connect_swapped (self->who, "changed", G_CALLBACK (who_cb), self);
  gtk_box_append (GTK_BOX (row), GTK_WIDGET (self->who));
  add_button (self, row, _("Week before"), G_CALLBACK (earlier_cb));
  self->title = GTK_LABEL (gtk_label_new (""));
  gtk_widget_add_css_class (GTK_WIDGET (self->title), "heading");
  gtk_widget_set_valign (GTK_WIDGET (self->title), GTK_ALIGN_END);
  gtk_widget_set_margin_bottom (GTK_WIDGET (self->title), 8);
  gtk_box_append (GTK_BOX (row), GTK_WIDGET (self->title));
  add_button (self, row, _("Week after"), G_CALLBACK (later_cb));
  self->known = add_button (self, row, "", G_CALLBACK (known_cb));
  self->timers = STEAD_TIMER_BOX (stead_timer_box_new ());
  gtk_widget_set_valign (stead_timer_box_get_begin (self->timers), GTK_ALIGN_END);
  gtk_box_append (GTK_BOX (row), stead_timer_box_get_begin (self->timers));
  gtk_box_append (GTK_BOX (box), row);
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->timers));
  gtk_box_append (GTK_BOX (box), stead_why_box_new_low (&self->whys));
  stead_pane_add_head (STEAD_PANE (self), box);
}

static void
stead_hours_pane_init (SteadHoursPane *self)
{
  SteadPane *pane = STEAD_PANE (self);

  self->week = STEAD_DAY_NONE;
  make_head (self);
  self->table = stead_pane_add_table (pane, _("Hours of the week"));
  stead_table_add_column (self->table, _("Day"), FALSE, FALSE, day_text, NULL, compare_days, self);
  stead_table_add_column (self->table, _("Who"), FALSE, FALSE, who_text, NULL, compare_people, self);
  stead_table_add_column (self->table, _("From"), TRUE, FALSE, from_text, NULL, NULL, self);
  stead_table_add_column (self->table, _("Until"), TRUE, FALSE, to_text, NULL, NULL, self);
  stead_table_add_column (self->table, _("Hours"), TRUE, FALSE, hours_text, NULL, compare_hours, self);
  stead_table_add_column (self->table, _("What was done"), FALSE, TRUE, duty_text, NULL, NULL, self);
  stead_table_add_column (self->table, _("It belongs to"), FALSE, FALSE, about_text, NULL, NULL, self);
  stead_table_add_column (self->table, _("State"), FALSE, FALSE, state_text, NULL, NULL, self);
  stead_table_set_empty (self->table, _("No hours in this week. Enter them for one person, or for everyone of a group in "
                                        "one go."));
  stead_table_set_activate (self->table, activate_cb, self);
  stead_pane_add_button (pane, _("Enter hours…"), G_CALLBACK (enter_cb));
  stead_pane_add_button (pane, _("Change or correct…"), G_CALLBACK (change_cb));
  stead_pane_add_button (pane, _("Check the week…"), G_CALLBACK (check_cb));
  stead_pane_add_button (pane, _("Print the week…"), G_CALLBACK (print_cb));
  stead_pane_add_button (pane, _("Print a person's hours…"), G_CALLBACK (print_person_cb));
}
