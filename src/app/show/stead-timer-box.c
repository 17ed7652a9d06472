/* stead-timer-box.c - who is working now, since when; begin, break, end.
 *
 * The farm file keeps the timer, so that it runs on while the program is closed.
 */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/show/stead-timer-box.h"

#include "answer/stead-hours-answer.h"
#include "app/keep/stead-pick.h"
#include "app/make/stead-make-parts.h"
#include "app/sell/stead-sell-parts.h"
#include "app/show/stead-show-picks.h"
#include "app/stead-ui.h"
#include "app/stead-wrap-layout.h"

#define TICK_S 30   /* minutes are shown; half of one is soon enough */

struct _SteadTimerBox
{
  GtkWidget  parent_instance;

  SteadDesk *desk;
  guint      tick;

  GtkWidget *rows, *form, *begin;
  SteadPick *who, *duty;
};

G_DEFINE_FINAL_TYPE (SteadTimerBox, stead_timer_box, GTK_TYPE_WIDGET)

typedef struct
{
  gint64      person_id;
  const char *duty;
  gint64      now;
} Timing;

static gboolean
start_act (SteadStore  *store,
           gpointer     data,
           GError     **error)
{
  const Timing *timing = data;

  return stead_work_timer_start (store, timing->person_id, timing->duty, timing->now, error);
}

static gboolean
pause_act (SteadStore  *store,
           gpointer     data,
           GError     **error)
{
  const Timing *timing = data;

  return stead_work_timer_pause (store, timing->person_id, timing->now, error);
}

static gboolean
drop_act (SteadStore  *store,
          gpointer     data,
          GError     **error)
{
  return stead_work_timer_drop (store, ((const Timing *) data)->person_id, error);
}

/* The work counts to the day on which it began. */
static gboolean
stop_act (SteadStore  *store,
          gpointer     data,
          GError     **error)
{
  const Timing *timing = data;
  g_autoptr(GPtrArray) timers = stead_work_timer_list (store, error);

  for (guint i = 0; timers != NULL && i < timers->len; i++)
    {
      const SteadWorkTimer *timer = timers->pdata[i];

      if (timer->person_id == timing->person_id)
        return stead_work_timer_stop (store, timing->person_id, stead_show_day_of (timer->started_at), timing->now, error);
    }
  return timers != NULL;
}

static void
act (SteadTimerBox *self,
     const char    *step,
     SteadDeskAct   what,
     Timing        *timing)
{
  g_autoptr(GError) error = NULL;

  timing->now = stead_sell_now ();
  if (!stead_desk_act (self->desk, step, what, timing, &error))
    stead_desk_say (self->desk, error->message, FALSE);
}

/* --- a running timer -------------------------------------------------------------------- */

static gint64
person_at (GtkWidget *button)
{
  return *(gint64 *) g_object_get_data (G_OBJECT (button), "person");
}

static void
stop_cb (GtkWidget     *button,
         SteadTimerBox *self)
{
  act (self, _("Timer stopped"), stop_act, &(Timing) { .person_id = person_at (button) });
}

static void
pause_cb (GtkWidget     *button,
          SteadTimerBox *self)
{
  act (self, _("Break"), pause_act, &(Timing) { .person_id = person_at (button) });
}

static void
drop_cb (GtkWidget     *button,
         SteadTimerBox *self)
{
  act (self, _("Timer dropped"), drop_act, &(Timing) { .person_id = person_at (button) });
}

static void
add_timer_button (SteadTimerBox        *self,
                  GtkWidget            *row,
                  const SteadWorkTimer *timer,
                  const char           *label,
                  GCallback             clicked)
{
  GtkWidget *button = gtk_button_new_with_label (label);
  /* Translators: what a button does, and for whom: "Stop: Ada". */
  g_autofree char *name = g_strdup_printf (C_("timer", "%1$s: %2$s"), label, timer->person_name);

  stead_ui_name (button, name);
  g_object_set_data_full (G_OBJECT (button), "person", g_memdup2 (&timer->person_id, sizeof timer->person_id), g_free);
  g_signal_connect (button, "clicked", clicked, self);
  gtk_box_append (GTK_BOX (row), button);
}

static void
add_timer (SteadTimerBox        *self,
           const SteadWorkTimer *timer)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12), *label;
  g_autofree char *hours = stead_hours_words ((gint64) stead_work_timer_minutes (timer, stead_sell_now ()));
  gboolean paused = timer->paused_at != G_MININT64;
  /* Translators: a person, what is done, "1 h 5 min". */
  g_autofree char *text = g_strdup_printf (paused ? _("%1$s has a break: %2$s, %3$s so far") : _("%1$s is at it: %2$s, %3$s so far"),
                                           timer->person_name, timer->duty, hours);

  gtk_widget_set_layout_manager (row, g_object_new (STEAD_TYPE_WRAP_LAYOUT, NULL));
  label = gtk_label_new (text);
  gtk_widget_set_valign (label, GTK_ALIGN_CENTER);
  gtk_box_append (GTK_BOX (row), label);
  add_timer_button (self, row, timer, _("Stop"), G_CALLBACK (stop_cb));
  add_timer_button (self, row, timer, paused ? _("Go on") : _("Break"), G_CALLBACK (pause_cb));
  add_timer_button (self, row, timer, _("Drop"), G_CALLBACK (drop_cb));
  gtk_box_append (GTK_BOX (self->rows), row);
}

static void
fill (SteadTimerBox *self)
{
  SteadStore *store = stead_desk_get_store (self->desk);
  g_autoptr(GPtrArray) timers = store != NULL ? stead_work_timer_list (store, NULL) : NULL;

  stead_make_clear (self->rows);
  for (guint i = 0; timers != NULL && i < timers->len; i++)
    add_timer (self, timers->pdata[i]);
  gtk_widget_set_visible (self->rows, timers != NULL && timers->len > 0);
}

/* Rows are made anew only while no button among them has the focus. */
static gboolean
tick_cb (gpointer box)
{
  SteadTimerBox *self = box;

  if (self->desk != NULL && gtk_widget_get_mapped (GTK_WIDGET (self)) && gtk_widget_get_first_child (self->rows) != NULL &&
      gtk_widget_get_focus_child (self->rows) == NULL)
    fill (self);
  return G_SOURCE_CONTINUE;
}

/* --- a new one ---------------------------------------------------------------------------- */

static void
begin_cb (SteadTimerBox *self)
{
  gtk_widget_set_visible (self->form, !gtk_widget_get_visible (self->form));
}

static void
start_cb (SteadTimerBox *self)
{
  Timing timing = { .person_id = stead_pick_get (self->who), .duty = stead_pick_get_text (self->duty) };

  if (timing.duty == NULL)
    timing.duty = _("Work on the farm");
  act (self, _("Timer started"), start_act, &timing);
  gtk_widget_hide (self->form);
}

static void
fill_form (SteadTimerBox *self)
{
  SteadStore *store = stead_desk_get_store (self->desk);
  g_autoptr(GPtrArray) duties = stead_show_picks_duties (store);
  gint64 who = stead_pick_get (self->who), duty = stead_pick_get (self->duty);

  stead_show_picks_people (self->who, store, NULL, 0);
  stead_pick_show (self->who, who);
  stead_pick_clear (self->duty);
  for (guint i = 0; i < duties->len; i++)
    stead_pick_append (self->duty, (gint64) i + 1, duties->pdata[i]);
  if (duties->len == 0)
    stead_pick_append (self->duty, 1, _("Work on the farm"));
  stead_pick_show (self->duty, duty);
}

static void
stead_timer_box_dispose (GObject *object)
{
  SteadTimerBox *self = STEAD_TIMER_BOX (object);

  g_clear_handle_id (&self->tick, g_source_remove);
  if (self->begin != NULL)
    g_signal_handlers_disconnect_by_data (self->begin, self);
  g_clear_object (&self->begin);
  stead_ui_drop_children (GTK_WIDGET (object));
  g_clear_object (&self->desk);
  G_OBJECT_CLASS (stead_timer_box_parent_class)->dispose (object);
}

static void
stead_timer_box_class_init (SteadTimerBoxClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = stead_timer_box_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
}

static void
stead_timer_box_init (SteadTimerBox *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6), *start = gtk_button_new_with_label (_("Start it"));

  self->rows = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  self->begin = g_object_ref_sink (gtk_button_new_with_label (_("Start a timer…")));
  g_signal_connect_swapped (self->begin, "clicked", G_CALLBACK (begin_cb), self);
  self->form = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  gtk_widget_set_layout_manager (self->form, g_object_new (STEAD_TYPE_WRAP_LAYOUT, NULL));
  self->who = STEAD_PICK (stead_pick_new (_("Who works")));
  self->duty = STEAD_PICK (stead_pick_new (_("At what")));
  gtk_widget_set_valign (start, GTK_ALIGN_END);
  gtk_widget_add_css_class (start, "primary");
  g_signal_connect_swapped (start, "clicked", G_CALLBACK (start_cb), self);
  gtk_box_append (GTK_BOX (self->form), GTK_WIDGET (self->who));
  gtk_box_append (GTK_BOX (self->form), GTK_WIDGET (self->duty));
  gtk_box_append (GTK_BOX (self->form), start);
  gtk_widget_hide (self->form);
  gtk_box_append (GTK_BOX (box), self->rows);
  gtk_box_append (GTK_BOX (box), self->form);
  gtk_widget_set_parent (box, GTK_WIDGET (self));
  self->tick = g_timeout_add_seconds (TICK_S, tick_cb, self);
}

GtkWidget *
stead_timer_box_new (void)
{
  return g_object_new (STEAD_TYPE_TIMER_BOX, NULL);
}

GtkWidget *
stead_timer_box_get_begin (SteadTimerBox *self)
{
  g_return_val_if_fail (STEAD_IS_TIMER_BOX (self), NULL);
  return self->begin;
}

void
stead_timer_box_show (SteadTimerBox *self,
                      SteadDesk     *desk)
{
  g_return_if_fail (STEAD_IS_TIMER_BOX (self));

  g_set_object (&self->desk, desk);
  fill (self);
  fill_form (self);
}
