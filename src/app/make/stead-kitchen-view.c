/* stead-kitchen-view.c - one kitchen batch: its lots, its run sheet, its people, what came out. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/make/stead-kitchen-view.h"

#include "answer/stead-kitchen-answer.h"
#include "app/keep/stead-label-dialog.h"
#include "app/make/stead-cook-dialog.h"
#include "app/make/stead-finish-dialog.h"
#include "app/make/stead-kitchen-lots.h"
#include "app/make/stead-kitchen-people.h"
#include "app/make/stead-make-parts.h"
#include "app/make/stead-run-row.h"
#include "app/stead-person-pick.h"
#include "app/stead-paper-dialog.h"
#include "app/stead-ui.h"
#include "app/stead-why-box.h"

struct _SteadKitchenView
{
  GtkWidget           parent_instance;

  SteadDesk          *desk;
  gint64              batch_id;
  SteadKitchenAnswer *answer;     /* (nullable): as last shown */

  GtkWidget          *buttons, *steps_card, *steps, *reopen, *finish, *labels, *lot, *change_end;
  GtkLabel           *title, *sentence, *caution, *cost, *note, *trouble;
  SteadKitchenLots   *lots;
  SteadKitchenPeople *people;
  SteadPersonPick    *person;
  SteadWhyBox        *whys;
};

G_DEFINE_FINAL_TYPE (SteadKitchenView, stead_kitchen_view, GTK_TYPE_WIDGET)

static gboolean
is_open (SteadKitchenView *self)
{
  return self->answer->kitchen->batch.ended_on == STEAD_DAY_NONE;
}

static gint64
now_s (void)
{
  return g_get_real_time () / G_USEC_PER_SEC;
}

/* --- the run sheet ----------------------------------------------------------------------- */

typedef struct
{
  gint64      step_id, at, person_id;
  gboolean    done;
  const char *note;      /* (nullable): that stands there */
} StepAct;

static gboolean
step_act (SteadStore *store,
          gpointer    data,
          GError    **error)
{
  const StepAct *act = data;

  if (act->done)
    return stead_kitchen_repo_step_done (store, act->step_id, act->at, act->person_id, act->note, error);
  return stead_kitchen_repo_step_start (store, act->step_id, act->at, act->person_id, error);
}

static const SteadRunLine *
line_of (SteadKitchenView *self,
         SteadRunRow      *row)
{
  for (guint i = 0; i < self->answer->lines->len; i++)
    {
      const SteadRunLine *line = self->answer->lines->pdata[i];

      if (line->step->id == stead_run_row_get_id (row))
        return line;
    }
  return NULL;
}

static void
do_step (SteadKitchenView *self,
         SteadRunRow      *row,
         gint64            at,
         gboolean          done,
         const char       *step)
{
  const SteadRunLine *line = line_of (self, row);
  StepAct act = { stead_run_row_get_id (row), at, stead_person_pick_get (self->person), done, NULL };
  g_autoptr(GError) error = NULL;
  g_autofree char *note = line != NULL ? g_strdup (line->step->note) : NULL;

  act.note = note;
  if (!stead_desk_act (self->desk, step, step_act, &act, &error))
    stead_make_say (self->trouble, error->message, FALSE);
}

static int
number_of (SteadKitchenView *self,
           SteadRunRow      *row)
{
  const SteadRunLine *line = line_of (self, row);

  return line != NULL ? line->number : 0;
}

static void
start_cb (SteadKitchenView *self,
          SteadRunRow      *row)
{
  /* Translators: a step that can be undone: the number of a step, the name of a kitchen batch. */
  g_autofree char *step = g_strdup_printf (_("the start of step %d of “%s”"), number_of (self, row),
                                           self->answer->kitchen->batch.name);

  do_step (self, row, now_s (), FALSE, step);
}

static void
done_cb (SteadKitchenView *self,
         SteadRunRow      *row)
{
  /* Translators: a step that can be undone: the number of a step, the name of a kitchen batch. */
  g_autofree char *step = g_strdup_printf (_("the end of step %d of “%s”"), number_of (self, row),
                                           self->answer->kitchen->batch.name);

  do_step (self, row, now_s (), TRUE, step);
}

static void
again_cb (SteadKitchenView *self,
          SteadRunRow      *row)
{
  /* Translators: a step that can be undone: the number of a step, the name of a kitchen batch. */
  g_autofree char *step = g_strdup_printf (_("taking back step %d of “%s”"), number_of (self, row),
                                           self->answer->kitchen->batch.name);

  do_step (self, row, STEAD_TIME_NONE, FALSE, step);
}

static gboolean
reading_act (SteadStore *store,
             gpointer    data,
             GError    **error)
{
  return stead_kitchen_repo_add_reading (store, data, error);
}

/* The time of a reading: now, or one of the kitchen day; after midnight the next day's. */
static gboolean
read_time (SteadKitchenView   *self,
           const SteadRunLine *line,
           const char         *clock,
           gint64             *out_at,
           GError            **error)
{
  SteadDay today = stead_store_get_today (stead_desk_get_store (self->desk));
  gint64 now = now_s ();

  *out_at = now;
  if (clock == NULL)
    return TRUE;
  if (!stead_make_read_clock (clock, MIN (today, self->answer->kitchen->batch.started_on), out_at, error))
    return FALSE;
  if (line->step->started_at != STEAD_TIME_NONE)
    while (*out_at + 60 <= line->step->started_at)
      *out_at += 86400;
  if (*out_at <= now)
    return TRUE;
  g_set_error_literal (error, G_IO_ERROR, G_IO_ERROR_INVALID_ARGUMENT, _("That time is still to come. Check the clock."));
  return FALSE;
}

static void
read_cb (SteadKitchenView *self,
         SteadRunRow      *row)
{
  const SteadRunLine *line = line_of (self, row);
  SteadShown shown = { .batch_id = self->batch_id, .step_id = stead_run_row_get_id (row) };
  g_autoptr(GError) error = NULL;
  g_autofree char *step = NULL, *value = NULL, *kind = NULL;
  const char *clock;
  gboolean corrects;

  if (line == NULL || !stead_run_row_get_reading (row, &shown.value, &clock, &corrects))
    return;
  if (!read_time (self, line, clock, &shown.at, &error))
    {
      stead_run_row_complain (row, error->message, TRUE);
      return;
    }
  shown.kind = kind = g_strdup (line->measure);
  shown.person_id = stead_person_pick_get (self->person);
  shown.corrects_id = corrects && line->shown != NULL ? line->shown->id : 0;
  value = stead_run_value_text (&shown, stead_desk_get_farm (self->desk)->units);
  /* Translators: a step that can be undone: a reading "158 °F", the number of a step. */
  step = g_strdup_printf (_("the reading of %s at step %d"), value, line->number);
  if (stead_desk_act (self->desk, step, reading_act, &shown, &error))
    stead_run_row_clear (row);
  else
    stead_run_row_complain (row, error->message, FALSE);
}

static GtkWidget *
add_run_row (SteadKitchenView *self)
{
  GtkWidget *row = stead_run_row_new (self->answer->farm->units);

  g_signal_connect_object (row, "start", G_CALLBACK (start_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (row, "done", G_CALLBACK (done_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (row, "again", G_CALLBACK (again_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (row, "read", G_CALLBACK (read_cb), self, G_CONNECT_SWAPPED);
  gtk_box_append (GTK_BOX (self->steps), row);
  return row;
}

/* Rows stay as long as the steps are the same, so that nothing typed is lost. */
static void
show_steps (SteadKitchenView *self)
{
  GtkWidget *row = gtk_widget_get_first_child (self->steps);
  gboolean same = TRUE;
  guint n = 0;

  for (; row != NULL; row = gtk_widget_get_next_sibling (row), n++)
    same &= n < self->answer->lines->len
            && ((SteadRunLine *) self->answer->lines->pdata[n])->step->id == stead_run_row_get_id (STEAD_RUN_ROW (row));
  if (!same || n != self->answer->lines->len)
    stead_make_clear (self->steps);
  row = gtk_widget_get_first_child (self->steps);
  for (guint i = 0; i < self->answer->lines->len; i++)
    {
      const SteadRunLine *line = self->answer->lines->pdata[i];
      GtkWidget *shown = row != NULL ? row : add_run_row (self);

      stead_run_row_show (STEAD_RUN_ROW (shown), line, self->answer->readings, is_open (self));
      row = row != NULL ? gtk_widget_get_next_sibling (row) : NULL;
    }
  gtk_widget_set_visible (self->steps_card, self->answer->lines->len > 0);
}

/* --- buttons --------------------------------------------------------------------------------- */

static void
change_cb (SteadKitchenView *self)
{
  stead_cook_dialog_show (GTK_WIDGET (self), self->desk, self->batch_id);
}

static void
paper_cb (SteadKitchenView *self)
{
  stead_paper_dialog_show (GTK_WIDGET (self), self->desk, "run-sheet", self->answer->kitchen->batch.name);
}

static void
finish_cb (SteadKitchenView *self)
{
  stead_finish_dialog_show (GTK_WIDGET (self), self->desk, self->batch_id, stead_person_pick_get (self->person));
}

static gboolean
reopen_act (SteadStore *store,
            gpointer    data,
            GError    **error)
{
  return stead_kitchen_repo_reopen (store, ((SteadKitchenView *) data)->batch_id, error);
}

static void
reopen_cb (SteadKitchenView *self)
{
  g_autoptr(GError) error = NULL;
  /* Translators: a step that can be undone; the name of a kitchen batch follows. */
  g_autofree char *step = g_strdup_printf (_("opening “%s” again"), self->answer->kitchen->batch.name);

  if (!stead_desk_act (self->desk, step, reopen_act, self, &error))
    stead_make_say (self->trouble, error->message, FALSE);
}

static void
labels_cb (SteadKitchenView *self)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadLot) lot = stead_lot_repo_get (stead_desk_get_store (self->desk), self->answer->harvest->lot_id, &error);

  if (lot == NULL)
    stead_make_say (self->trouble, error->message, FALSE);
  else
    stead_label_dialog_show (GTK_WIDGET (self), self->desk, lot);
}

static void
lot_cb (SteadKitchenView *self)
{
  stead_desk_jump (self->desk, STEAD_TARGET_LOT, self->answer->harvest->lot_id);
}

/* --- showing -------------------------------------------------------------------------------- */

static void
show_end (SteadKitchenView *self)
{
  const SteadHarvest *harvest = self->answer->harvest;
  g_autoptr(GPtrArray) whys = stead_kitchen_answer_whys (self->answer);
  gboolean has_lot = harvest != NULL && harvest->lot_id != 0;
  /* Translators: the code of a lot. */
  g_autofree char *lot = has_lot ? g_strdup_printf (_("Open lot %s"), harvest->lot_code) : NULL;

  stead_make_say (self->cost, self->answer->cost_text, FALSE);
  stead_why_box_set (self->whys, whys);
  if (lot != NULL)
    {
      gtk_button_set_label (GTK_BUTTON (self->lot), lot);
      stead_ui_name (self->lot, lot);
    }
  gtk_widget_set_visible (self->finish, is_open (self));
  gtk_widget_set_visible (self->labels, has_lot);
  gtk_widget_set_visible (self->lot, has_lot);
  gtk_widget_set_visible (self->change_end, harvest != NULL);
  gtk_widget_set_visible (self->reopen, harvest != NULL);
}

static void
show_answer (SteadKitchenView *self)
{
  SteadKitchenAnswer *answer = self->answer;

  gtk_label_set_text (self->title, answer->kitchen->batch.name);
  stead_make_say (self->sentence, answer->sentence, TRUE);
  stead_make_say (self->caution, answer->caution, FALSE);
  stead_make_say (self->note, answer->kitchen->batch.note, FALSE);
  stead_make_say (self->trouble, NULL, FALSE);
  stead_person_pick_fill (self->person, stead_desk_get_store (self->desk));
  stead_kitchen_lots_show (self->lots, self->desk, answer);
  show_steps (self);
  stead_kitchen_people_show (self->people, self->desk, answer);
  show_end (self);
}

void
stead_kitchen_view_show (SteadKitchenView *self,
                         SteadDesk        *desk,
                         gint64            batch_id)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadKitchenAnswer) answer = NULL;

  g_return_if_fail (STEAD_IS_KITCHEN_VIEW (self));

  g_set_object (&self->desk, desk);
  self->batch_id = batch_id;
  answer = stead_kitchen_answer_new (stead_desk_get_store (desk), batch_id, &error);
  gtk_widget_set_sensitive (self->buttons, answer != NULL);
  if (answer == NULL)
    {
      gtk_label_set_text (self->sentence, error->message);
      return;
    }
  g_clear_pointer (&self->answer, stead_kitchen_answer_free);
  self->answer = g_steal_pointer (&answer);
  show_answer (self);
}

/* --- the object ---------------------------------------------------------------------------- */

static void
stead_kitchen_view_dispose (GObject *object)
{
  SteadKitchenView *self = STEAD_KITCHEN_VIEW (object);

  gtk_widget_dispose_template (GTK_WIDGET (object), STEAD_TYPE_KITCHEN_VIEW);
  stead_ui_drop_children (GTK_WIDGET (object));
  g_clear_pointer (&self->answer, stead_kitchen_answer_free);
  g_clear_object (&self->desk);
  G_OBJECT_CLASS (stead_kitchen_view_parent_class)->dispose (object);
}

static void
bind_callbacks (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_callback (widget_class, change_cb);
  gtk_widget_class_bind_template_callback (widget_class, finish_cb);
  gtk_widget_class_bind_template_callback (widget_class, labels_cb);
  gtk_widget_class_bind_template_callback (widget_class, lot_cb);
  gtk_widget_class_bind_template_callback (widget_class, paper_cb);
  gtk_widget_class_bind_template_callback (widget_class, reopen_cb);
}

static void
stead_kitchen_view_class_init (SteadKitchenViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (STEAD_TYPE_KITCHEN_LOTS);
  g_type_ensure (STEAD_TYPE_KITCHEN_PEOPLE);
  g_type_ensure (STEAD_TYPE_PERSON_PICK);
  G_OBJECT_CLASS (klass)->dispose = stead_kitchen_view_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class, STEAD_UI ("make/stead-kitchen-view.ui"));
  gtk_widget_class_bind_template_child (widget_class, SteadKitchenView, buttons);
  gtk_widget_class_bind_template_child (widget_class, SteadKitchenView, caution);
  gtk_widget_class_bind_template_child (widget_class, SteadKitchenView, change_end);
  gtk_widget_class_bind_template_child (widget_class, SteadKitchenView, cost);
  gtk_widget_class_bind_template_child (widget_class, SteadKitchenView, finish);
  gtk_widget_class_bind_template_child (widget_class, SteadKitchenView, labels);
  gtk_widget_class_bind_template_child (widget_class, SteadKitchenView, lot);
  gtk_widget_class_bind_template_child (widget_class, SteadKitchenView, lots);
  gtk_widget_class_bind_template_child (widget_class, SteadKitchenView, note);
  gtk_widget_class_bind_template_child (widget_class, SteadKitchenView, people);
  gtk_widget_class_bind_template_child (widget_class, SteadKitchenView, person);
  gtk_widget_class_bind_template_child (widget_class, SteadKitchenView, reopen);
  gtk_widget_class_bind_template_child (widget_class, SteadKitchenView, sentence);
  gtk_widget_class_bind_template_child (widget_class, SteadKitchenView, steps);
  gtk_widget_class_bind_template_child (widget_class, SteadKitchenView, steps_card);
  gtk_widget_class_bind_template_child (widget_class, SteadKitchenView, title);
  gtk_widget_class_bind_template_child (widget_class, SteadKitchenView, trouble);
  bind_callbacks (widget_class);
}

static void
stead_kitchen_view_init (SteadKitchenView *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_box_insert_child_after (GTK_BOX (gtk_widget_get_parent (GTK_WIDGET (self->cost))),
                              stead_why_box_new_folded (&self->whys), GTK_WIDGET (self->cost));
  stead_kitchen_lots_set_person (self->lots, self->person);
}
