/* stead-checklist-stops.c - what cannot be sold as planned, what is held back, and how each was settled. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/check/stead-checklist-view-private.h"

#include "app/check/stead-settle-box.h"

typedef struct
{
  gint64           id, person_id;
  const char      *text;
  SteadHoldOutcome outcome;
} Settle;

static gboolean
stop_act (SteadStore *store,
          gpointer    data,
          GError    **error)
{
  const Settle *settle = data;

  return stead_check_repo_settle_stop (store, settle->id, settle->text, settle->person_id, error);
}

static gboolean
hold_act (SteadStore *store,
          gpointer    data,
          GError    **error)
{
  const Settle *settle = data;

  return stead_hold_repo_settle (store, settle->id, settle->outcome, settle->text, settle->person_id, error);
}

static void
settle (SteadChecklistView *self,
        SteadSettleBox     *box,
        SteadDeskAct        act,
        SteadHoldOutcome    outcome,
        const char         *step)
{
  g_autofree char *text = g_strdup (stead_settle_box_get_text (box));
  Settle settle = { stead_settle_box_get_id (box), stead_person_pick_get (self->person), text, outcome };
  g_autoptr(GError) error = NULL;

  g_strstrip (text);
  if (*text == '\0')
    stead_settle_box_complain (box, _("Write down what was done."));
  else if (!stead_desk_act (self->desk, step, act, &settle, &error))
    stead_settle_box_complain (box, error->message);
}

static void
stop_cb (SteadChecklistView *self,
         int                 way,
         SteadSettleBox     *box)
{
  /* Translators: a step that can be undone; the name of a checklist follows. */
  g_autofree char *step = g_strdup_printf (_("what was done about a stop of “%s”"), self->answer->list->name);

  settle (self, box, stop_act, STEAD_HOLD_OPEN, step);
}

static void
hold_cb (SteadChecklistView *self,
         int                 way,
         SteadSettleBox     *box)
{
  static const SteadHoldOutcome outcomes[] = { STEAD_HOLD_MENDED, STEAD_HOLD_DISCARDED, STEAD_HOLD_MISTAKEN };
  /* Translators: a step that can be undone; the name of a checklist follows. */
  g_autofree char *step = g_strdup_printf (_("settling what was held by “%s”"), self->answer->list->name);

  settle (self, box, hold_act, outcomes[way], step);
}

/* Boxes stay as long as the same things are open, so that nothing typed is lost. */
static GtkWidget *
find_box (GtkWidget *parent,
          gint64     id)
{
  GtkWidget *box = gtk_widget_get_first_child (parent);

  while (box != NULL && stead_settle_box_get_id (STEAD_SETTLE_BOX (box)) != id)
    box = gtk_widget_get_next_sibling (box);
  return box;
}

static void
show_stop (SteadChecklistView       *self,
           const SteadCheckStopRead *read,
           int                       number)
{
  GtkWidget *box = find_box (self->stops, read->stop->id);
  gboolean open = read->settled == NULL;

  if (box == NULL && open)
    {
      g_autofree char *label = g_strdup_printf (_("What was done instead of stop %d"), number);
      g_autofree char *name = g_strdup_printf (_("Save what was done instead of stop %d"), number);

      box = stead_settle_box_new (read->stop->id);
      stead_settle_box_ask (STEAD_SETTLE_BOX (box), label);
      stead_settle_box_add (STEAD_SETTLE_BOX (box), _("Save what was done"), name);
      g_signal_connect_object (box, "settled", G_CALLBACK (stop_cb), self, G_CONNECT_SWAPPED);
      gtk_box_append (GTK_BOX (self->stops), box);
    }
  if (open)
    stead_settle_box_say (STEAD_SETTLE_BOX (box), read->food, read->text, read->way, read->source);
}

static gboolean
is_open_stop (SteadChecklistView *self,
              gint64              id)
{
  for (guint i = 0; i < self->answer->stops->len; i++)
    {
      const SteadCheckStopRead *read = self->answer->stops->pdata[i];

      if (read->stop->id == id)
        return read->settled == NULL;
    }
  return FALSE;
}

static gboolean
is_open_hold (SteadChecklistView *self,
              gint64              id)
{
  for (guint i = 0; i < self->answer->holds->len; i++)
    {
      const SteadHold *hold = self->answer->holds->pdata[i];

      if (hold->id == id)
        return hold->ended_at == STEAD_TIME_NONE;
    }
  return FALSE;
}

static void
drop_settled (SteadChecklistView *self,
              GtkWidget          *parent,
              gboolean          (*is_open) (SteadChecklistView *, gint64))
{
  GtkWidget *box = gtk_widget_get_first_child (parent);

  while (box != NULL)
    {
      GtkWidget *next = gtk_widget_get_next_sibling (box);

      if (!is_open (self, stead_settle_box_get_id (STEAD_SETTLE_BOX (box))))
        gtk_box_remove (GTK_BOX (parent), box);
      box = next;
    }
}

static void
show_hold (SteadChecklistView *self,
           const SteadHold    *hold,
           int                 number)
{
  GtkWidget *box = find_box (self->holds, hold->id);
  /* Translators: the name of a batch, or an item and the code of its lot. */
  g_autofree char *text = g_strdup_printf (_("Held back from sale and from use: %s"), hold->what);

  if (box == NULL)
    {
      g_autofree char *label = g_strdup_printf (_("How hold %d was settled"), number);
      g_autofree char *mended = g_strdup_printf (_("Hold %d was put right"), number);
      g_autofree char *thrown = g_strdup_printf (_("What hold %d keeps was thrown away"), number);
      g_autofree char *slip = g_strdup_printf (_("Hold %d came of a slip"), number);

      box = stead_settle_box_new (hold->id);
      stead_settle_box_ask (STEAD_SETTLE_BOX (box), label);
      stead_settle_box_add (STEAD_SETTLE_BOX (box), _("Put right, and read again"), mended);
      stead_settle_box_add (STEAD_SETTLE_BOX (box), _("Thrown away"), thrown);
      stead_settle_box_add (STEAD_SETTLE_BOX (box), _("The reading was a slip"), slip);
      g_signal_connect_object (box, "settled", G_CALLBACK (hold_cb), self, G_CONNECT_SWAPPED);
      gtk_box_append (GTK_BOX (self->holds), box);
    }
  stead_settle_box_say (STEAD_SETTLE_BOX (box), NULL, text, hold->reason, NULL);
}

void
stead_checklist_view_show_stops (SteadChecklistView *self)
{
  drop_settled (self, self->stops, is_open_stop);
  drop_settled (self, self->holds, is_open_hold);
  for (guint i = 0; i < self->answer->stops->len; i++)
    show_stop (self, self->answer->stops->pdata[i], (int) i + 1);
  for (guint i = 0; i < self->answer->holds->len; i++)
    if (((const SteadHold *) self->answer->holds->pdata[i])->ended_at == STEAD_TIME_NONE)
      show_hold (self, self->answer->holds->pdata[i], (int) i + 1);
  gtk_widget_set_visible (self->stops, gtk_widget_get_first_child (self->stops) != NULL);
  gtk_widget_set_visible (self->holds, gtk_widget_get_first_child (self->holds) != NULL);
}
