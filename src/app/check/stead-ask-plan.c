/* stead-ask-plan.c - the plan of a new checklist: what stops it, and what is still asked.
 *
 * It is made anew at each answer; rows of questions that stay keep the focus.
 */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/check/stead-ask-dialog-private.h"

#include "app/check/stead-ask-row.h"
#include "app/make/stead-make-parts.h"

/* --- what was answered --------------------------------------------------------------- */

void
stead_ask_dialog_keep (SteadAskDialog           *self,
                       const SteadCheckAnswered *answer)
{
  SteadCheckAnswered kept = { answer->key, g_intern_string (answer->food), g_intern_string (answer->word) };

  for (guint i = 0; i < self->answers->len; i++)
    {
      SteadCheckAnswered *old = &g_array_index (self->answers, SteadCheckAnswered, i);

      if (old->key == kept.key && old->food == kept.food)
        {
          old->word = kept.word;
          return;
        }
    }
  g_array_append_val (self->answers, kept);
}

/* @limits: of SteadLocalLimit, @rows: what stead_check_local_rows() made of them. */
SteadCheckOrder
stead_ask_dialog_order (SteadAskDialog *self,
                        SteadDay        day,
                        const GArray   *rows)
{
  gint64 what = stead_pick_get (self->what);
  SteadCheckOrder order = { .kind = STEAD_CHECK_ORDER_KITCHEN, .id = what, .day = day };

  if (what == STEAD_ASK_MENU)
    {
      order.kind = STEAD_CHECK_ORDER_MENU;
      order.id = 0;
      order.text = stead_field_get_text (self->menu);
    }
  if (stead_ask_is_sale (what))
    {
      order.kind = STEAD_CHECK_ORDER_SALE_DAY;
      order.id = stead_ask_sale_of (what);
    }
  order.answers = (const SteadCheckAnswered *) (void *) self->answers->data;
  order.n_answers = self->answers->len;
  order.local = (const SteadLimitLocal *) (void *) rows->data;
  order.n_local = rows->len;
  return order;
}

SteadDay
stead_ask_dialog_day (SteadAskDialog *self)
{
  SteadDay today = stead_store_get_today (stead_desk_get_store (stead_dialog_get_desk (STEAD_DIALOG (self))));
  SteadDay day = today;

  if (!stead_field_is_empty (self->day) && !stead_field_read_day (self->day, today, &day))
    return STEAD_DAY_NONE;
  return day;
}

/* --- showing the plan ------------------------------------------------------------------- */

static void
answered_cb (SteadAskDialog *self,
             SteadAskRow    *row)
{
  SteadCheckAnswered answer = stead_ask_row_get (row);

  if (self->quiet || answer.word == NULL)
    return;
  stead_ask_dialog_keep (self, &answer);
  stead_ask_dialog_plan (self);
}

static GtkWidget *
add_question (SteadAskDialog *self)
{
  GtkWidget *row = stead_ask_row_new ();

  g_signal_connect_object (row, "answered", G_CALLBACK (answered_cb), self, G_CONNECT_SWAPPED);
  return row;
}

/* Rows of questions that stay are kept where they are: one of them has the focus. */
static void
show_questions (SteadAskDialog *self)
{
  GtkWidget *at = gtk_widget_get_first_child (self->questions), *before = NULL;
  const char *food = NULL;

  for (guint i = 0; self->plan != NULL && i < self->plan->questions->len; i++)
    {
      const SteadCheckAsked *asked = self->plan->questions->pdata[i];
      GtkWidget *row = at;

      while (row != NULL && !stead_ask_row_is (STEAD_ASK_ROW (row), asked))
        row = gtk_widget_get_next_sibling (row);
      if (row == NULL)
        {
          row = add_question (self);
          gtk_box_insert_child_after (GTK_BOX (self->questions), row, before);
        }
      else if (row != at)
        gtk_box_reorder_child_after (GTK_BOX (self->questions), row, before);
      stead_ask_row_show (STEAD_ASK_ROW (row), asked, g_strcmp0 (food, asked->food) != 0);
      food = asked->food;
      before = row;
      at = gtk_widget_get_next_sibling (row);
    }
  while (at != NULL)
    {
      GtkWidget *gone = at;

      at = gtk_widget_get_next_sibling (at);
      gtk_box_remove (GTK_BOX (self->questions), gone);
    }
}

static void
show_stops (SteadAskDialog *self)
{
  stead_make_clear (self->stops);
  for (guint i = 0; self->plan != NULL && i < self->plan->stops->len; i++)
    {
      const SteadCheckStopped *stopped = self->plan->stops->pdata[i];
      GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 3);

      gtk_widget_add_css_class (box, "stop");
      if (stopped->food != NULL)
        gtk_box_append (GTK_BOX (box), stead_make_label (stopped->food, "heading"));
      gtk_box_append (GTK_BOX (box), stead_make_label (stopped->text, "sentence"));
      gtk_box_append (GTK_BOX (box), stead_make_label (stopped->way, "strong"));
      gtk_box_append (GTK_BOX (box), stead_make_label (stopped->source, "soft"));
      gtk_box_append (GTK_BOX (self->stops), box);
    }
  gtk_widget_set_visible (self->stops, gtk_widget_get_first_child (self->stops) != NULL);
}

static void
show_unknown (SteadAskDialog *self)
{
  g_autoptr(GPtrArray) names = g_ptr_array_new ();
  g_autofree char *list = NULL, *text = NULL;

  for (guint i = 0; self->plan != NULL && i < self->plan->menu->unknown->len; i++)
    g_ptr_array_add (names, self->plan->menu->unknown->pdata[i]);
  if (names->len > 0)
    {
      g_ptr_array_add (names, NULL);
      list = g_strjoinv (", ", (char **) names->pdata);
      /* Translators: names of foods follow. */
      text = g_strdup_printf (_("Not in the recipes, so more is asked about it: %s"), list);
    }
  stead_make_say (self->unknown, text, FALSE);
}

static void
show_plan (SteadAskDialog *self,
           const char     *problem)
{
  self->quiet = TRUE;
  show_stops (self);
  show_unknown (self);
  show_questions (self);
  stead_make_say (self->sentence, self->plan != NULL ? self->plan->sentence : problem, FALSE);
  stead_make_say (self->caution, self->plan != NULL ? self->plan->caution : NULL, FALSE);
  self->quiet = FALSE;
}

void
stead_ask_dialog_plan (SteadAskDialog *self)
{
  SteadStore *store = stead_desk_get_store (stead_dialog_get_desk (STEAD_DIALOG (self)));
  SteadDay day = stead_ask_dialog_day (self);
  g_autoptr(GError) error = NULL;
  g_autoptr(GPtrArray) limits = NULL;
  g_autoptr(GArray) rows = NULL;
  SteadCheckOrder order;

  g_clear_pointer (&self->plan, stead_check_plan_answer_free);
  if (day == STEAD_DAY_NONE)
    return;
  if (stead_pick_get (self->what) == STEAD_ASK_MENU && stead_field_is_empty (self->menu))
    {
      show_plan (self, _("Type what is made or sold, with commas between."));
      return;
    }
  limits = stead_local_limit_repo_list (store, day, &error);
  rows = limits != NULL ? stead_check_local_rows (limits) : NULL;
  if (rows != NULL)
    {
      order = stead_ask_dialog_order (self, day, rows);
      self->plan = stead_check_plan_answer_new (store, &order, &error);
    }
  show_plan (self, error != NULL ? error->message : NULL);
}
