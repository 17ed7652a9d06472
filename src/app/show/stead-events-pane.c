/* stead-events-pane.c - one event: its team, its scores, and what the packet still lacks. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "answer/stead-event-answer.h"
#include "app/show/stead-events-pane.h"
#include "app/make/stead-make-parts.h"
#include "app/show/stead-learn-dialogs.h"
#include "app/stead-chart-area.h"
#include "app/stead-why-box.h"
#include "core/stead-hours.h"
#include "draw/stead-score-chart.h"

/* So near to a score does the pointer mean it, in pixels. */
#define NEAR 24.0

struct _SteadEventsPane
{
  SteadPickPane  parent_instance;

  GtkWidget     *team;      /* a label */
  SteadWhyBox   *whys;
  GtkWidget     *scores;    /* heading and chart, beside the table */
  GtkWidget     *chart;
  SteadEventScores *lines;  /* (nullable): what the chart shows */
  SteadTable    *table;
  gint64         packet_id; /* of the event; 0: none */
};

G_DEFINE_FINAL_TYPE (SteadEventsPane, stead_events_pane, STEAD_TYPE_PICK_PANE)

static gint64
event_of (gpointer pane)
{
  return stead_pick_pane_get (STEAD_PICK_PANE (pane));
}

static void
item_free (gpointer data)
{
  SteadEventItem *item = data;

  g_free (item->text);
  g_free (item->lack);
  g_free (item);
}

static const SteadEventItem *
item_of (gpointer row)
{
  return stead_row_get (STEAD_ROW (row));
}

static char *
state_text (gpointer row,
            gpointer data)
{
  return g_strdup (item_of (row)->is_done ? C_("state of a need", "✓ there") : C_("state of a need", "lacking"));
}

static char *what_text (gpointer row, gpointer data) { return g_strdup (item_of (row)->text); }
static char *lack_text (gpointer row, gpointer data) { return g_strdup (item_of (row)->lack); }

static void
row_cb (gpointer row,
        gpointer data)
{
  const SteadEventItem *item = item_of (row);
  SteadEventsPane *self = data;
  SteadDesk *desk = stead_pane_get_desk (STEAD_PANE (self));

  if (item->target != STEAD_TARGET_NONE)
    stead_desk_jump (desk, item->target, item->target_id);
  else if (item->need_id != 0)
    stead_need_dialog_show (GTK_WIDGET (self), desk, event_of (self), item->need_id);
  else if (item->lack != NULL)
    stead_desk_say (desk, item->lack, FALSE);
}

/* "Wednesday, December 16, 2026, Fairground hall", and under it who takes part:
 * "Maya R. (Speaker): 3:30 h · Devon K.: 2:00 h prepared" */
static void
show_team (SteadEventsPane        *self,
           const SteadEventAnswer *answer)
{
  g_autoptr(GString) text = g_string_new (answer->when);

  for (guint i = 0; i < answer->team->len; i++)
    {
      const SteadEventPerson *person = answer->team->pdata[i];
      g_autofree char *hours = stead_hours_format ((gint64) (g_array_index (answer->minutes, double, i) + 0.5));
      g_autofree char *one = person->role != NULL
                             /* Translators: a name, a part in the team, "3:30" hours of preparation. */
                             ? g_strdup_printf (_("%1$s (%2$s): %3$s h"), person->name, person->role, hours)
                             : g_strdup_printf (_("%1$s: %2$s h prepared"), person->name, hours);

      g_string_append_printf (text, i == 0 ? "\n%s" : " · %s", one);
    }
  gtk_label_set_text (GTK_LABEL (self->team), text->str);
  gtk_widget_set_visible (self->team, TRUE);
}

/* --- the chart of scores --------------------------------------------------------------- */

static void
paint_cb (cairo_t              *cr,
          const SteadDrawStyle *style,
          double                width,
          double                height,
          gpointer              data)
{
  const SteadEventsPane *self = data;
  SteadScoreLayout layout;

  if (self->lines == NULL || self->lines->series.n == 0)
    return;
  stead_score_chart_layout (cr, &self->lines->series, style, width, height, &layout);
  stead_score_chart_paint (cr, &self->lines->series, style, &layout);
}

static void
lay (const SteadEventsPane *self,
     SteadScoreLayout      *layout)
{
  g_autoptr(GtkSnapshot) none = gtk_snapshot_new ();
  graphene_rect_t box = GRAPHENE_RECT_INIT (0, 0, 1, 1);
  cairo_t *cr = gtk_snapshot_append_cairo (none, &box);
  SteadDrawStyle style;

  stead_chart_area_get_style (STEAD_CHART_AREA (self->chart), NULL, &style);
  stead_score_chart_layout (cr, &self->lines->series, &style, gtk_widget_get_width (self->chart),
                            gtk_widget_get_height (self->chart), layout);
  cairo_destroy (cr);
}

static char *
hint_cb (double   x,
         double   y,
         gpointer data)
{
  const SteadEventsPane *self = data;
  SteadScoreLayout layout;
  double nearest = NEAR;
  char *hint = NULL;

  if (self->lines == NULL || self->lines->series.n == 0)
    return NULL;
  lay (self, &layout);
  for (int i = 0; i < self->lines->series.n; i++)
    for (gsize k = 0; k < self->lines->series.lines[i].n; k++)
      {
        double at_x, at_y, away;

        stead_score_chart_point (&layout, &self->lines->series.lines[i].points[k], &at_x, &at_y);
        away = hypot (at_x - x, at_y - y);
        if (away >= nearest)
          continue;
        nearest = away;
        g_free (hint);
        hint = stead_event_scores_hint (self->lines, i, k);
      }
  return hint;
}

/* Line by line, each from its first score to its last. */
static char *
step_cb (int       index,
         double   *x,
         double   *y,
         gpointer  data)
{
  const SteadEventsPane *self = data;
  SteadScoreLayout layout;
  gsize k = (gsize) MAX (index, 0);

  if (index < 0 || self->lines == NULL)
    return NULL;
  for (int i = 0; i < self->lines->series.n; i++)
    {
      const SteadScoreLine *line = &self->lines->series.lines[i];

      if (k < line->n)
        {
          lay (self, &layout);
          stead_score_chart_point (&layout, &line->points[k], x, y);
          return stead_event_scores_hint (self->lines, i, k);
        }
      k -= line->n;
    }
  return NULL;
}

static void
show_scores (SteadEventsPane  *self,
             SteadEventAnswer *answer)   /* (nullable): no event */
{
  g_clear_pointer (&self->lines, stead_event_scores_free);
  if (answer != NULL)
    self->lines = g_steal_pointer (&answer->lines);
  gtk_widget_set_visible (self->scores, self->lines != NULL && self->lines->text != NULL);
  if (self->lines != NULL && self->lines->text != NULL)
    stead_chart_area_describe (STEAD_CHART_AREA (self->chart), _("Scores of practices"), self->lines->text);
  gtk_widget_queue_draw (self->chart);
}

static void
add_chart (SteadEventsPane *self)
{
  GtkWidget *heading = stead_make_label (_("How practice went"), "heading");

  self->scores = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  self->chart = stead_chart_area_new ();
  stead_chart_area_set_paint (STEAD_CHART_AREA (self->chart), paint_cb, hint_cb, self);
  stead_chart_area_set_step (STEAD_CHART_AREA (self->chart), step_cb);
  stead_chart_area_set_file_name (STEAD_CHART_AREA (self->chart), "scores");
  gtk_widget_set_size_request (self->chart, 340, 100);   /* least, with a “Why?” open on a small screen */
  gtk_widget_set_vexpand (self->chart, TRUE);
  gtk_widget_set_margin_start (self->scores, 18);
  gtk_box_append (GTK_BOX (self->scores), heading);
  gtk_box_append (GTK_BOX (self->scores), self->chart);
  stead_pane_add_body (STEAD_PANE (self), self->scores);
  gtk_widget_set_hexpand (self->scores, FALSE);
}

/* --- the pane --------------------------------------------------------------------------- */

static gboolean
stead_events_pane_list (SteadPickPane  *pane,
                        SteadPick      *pick,
                        GError        **error)
{
  g_autoptr(GPtrArray) events = stead_event_repo_list (stead_pane_get_store (STEAD_PANE (pane)), error);

  for (guint i = 0; events != NULL && i < events->len; i++)
    stead_pick_append (pick, ((SteadEvent *) events->pdata[i])->id, ((SteadEvent *) events->pdata[i])->name);
  return events != NULL;
}

static void
stead_events_pane_show_none (SteadPickPane *pane)
{
  SteadEventsPane *self = STEAD_EVENTS_PANE (pane);
  g_autoptr(GPtrArray) whys = NULL;

  gtk_widget_set_visible (self->team, FALSE);
  show_scores (self, NULL);
  whys = g_ptr_array_new ();
  stead_why_box_set (self->whys, whys);
  stead_pane_say (STEAD_PANE (pane), _("No event is entered yet."), NULL);
  stead_pick_pane_empty (self->table);
}

static void
stead_events_pane_show_chosen (SteadPickPane *pane,
                               gint64         id)
{
  SteadEventsPane *self = STEAD_EVENTS_PANE (pane);
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadEventAnswer) answer = stead_event_answer_new (stead_pane_get_store (STEAD_PANE (pane)), id, &error);
  g_autoptr(GListModel) rows = NULL;
  g_autoptr(GPtrArray) whys = NULL;

  stead_pane_say (STEAD_PANE (pane), answer != NULL ? answer->sentence : NULL, error);
  if (answer == NULL)
    return;
  self->packet_id = answer->packet_id;
  show_team (self, answer);
  whys = stead_event_answer_whys (answer);
  stead_why_box_set (self->whys, whys);
  show_scores (self, answer);
  rows = stead_rows_from_array (g_steal_pointer (&answer->items), item_free);
  stead_table_set_model (self->table, rows);
}

static void new_cb (SteadPane *pane) { stead_event_dialog_show (GTK_WIDGET (pane), stead_pane_get_desk (pane), 0); }

/* FALSE after saying that there is no event. */
static gboolean
has_event (SteadPane *pane)
{
  if (event_of (pane) != 0)
    return TRUE;
  stead_desk_say (stead_pane_get_desk (pane), _("Enter an event first."), FALSE);
  return FALSE;
}

#define FOR_EVENT(name, dialog, ...) \
  static void \
  name (SteadPane *pane) \
  { \
    if (has_event (pane)) \
      dialog (GTK_WIDGET (pane), stead_pane_get_desk (pane), event_of (pane) __VA_ARGS__); \
  }

FOR_EVENT (edit_cb, stead_event_dialog_show)
FOR_EVENT (member_cb, stead_member_dialog_show)
FOR_EVENT (score_cb, stead_score_dialog_show)
FOR_EVENT (need_cb, stead_need_dialog_show, , 0)

/* --- marking, and making the packet ---------------------------------------------------- */

typedef struct
{
  gint64   event_id, need_id;
} Mark;

static gboolean
mark_act (SteadStore  *store,
          gpointer     data,
          GError     **error)
{
  const Mark *mark = data;
  g_autoptr(GPtrArray) needs = stead_event_repo_needs (store, mark->event_id, error);

  for (guint i = 0; needs != NULL && i < needs->len; i++)
    {
      SteadEventNeed *need = needs->pdata[i];

      if (need->id != mark->need_id)
        continue;
      need->done_on = need->done_on == STEAD_DAY_NONE ? stead_store_get_today (store) : STEAD_DAY_NONE;
      return stead_event_repo_save_need (store, need, error);
    }
  return needs != NULL;
}

static void
mark_cb (SteadPane *pane)
{
  const SteadEventItem *item = stead_pane_get_chosen (pane);
  SteadDesk *desk = stead_pane_get_desk (pane);
  g_autoptr(GError) error = NULL;
  Mark mark = { event_of (pane), 0 };

  if (item == NULL)
    return;
  mark.need_id = item->need_id;
  if (mark.need_id == 0)
    stead_desk_say (desk, _("The program sees by itself whether this is there."), FALSE);
  else if (!stead_desk_act (desk, item->is_done ? _("something is not ready") : _("something is ready"), mark_act, &mark, &error))
    stead_desk_say (desk, error->message, FALSE);
}

static gboolean
packet_act (SteadStore  *store,
            gpointer     data,
            GError     **error)
{
  SteadEventsPane *self = data;
  g_autoptr(SteadEvent) event = stead_event_repo_get (store, event_of (self), error);
  g_autoptr(SteadPacket) packet = event != NULL ? stead_packet_usual (store, stead_store_get_today (store), error) : NULL;

  if (packet == NULL)
    return FALSE;
  packet->name = g_strdup (event->name);
  packet->event_id = event->id;
  if (!stead_packet_repo_save (store, packet, error))
    return FALSE;
  self->packet_id = packet->id;
  return TRUE;
}

static void
packet_cb (SteadPane *pane)
{
  SteadEventsPane *self = STEAD_EVENTS_PANE (pane);
  SteadDesk *desk = stead_pane_get_desk (pane);
  g_autoptr(GError) error = NULL;

  if (!has_event (pane))
    return;
  if (self->packet_id == 0 && !stead_desk_act (desk, _("a packet"), packet_act, self, &error))
    {
      stead_desk_say (desk, error->message, FALSE);
      return;
    }
  stead_desk_jump (desk, STEAD_TARGET_PACKET, self->packet_id);
}

static void
stead_events_pane_finalize (GObject *object)
{
  g_clear_pointer (&STEAD_EVENTS_PANE (object)->lines, stead_event_scores_free);
  G_OBJECT_CLASS (stead_events_pane_parent_class)->finalize (object);
}

static void
stead_events_pane_class_init (SteadEventsPaneClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = stead_events_pane_finalize;
  STEAD_PICK_PANE_CLASS (klass)->list = stead_events_pane_list;
  STEAD_PICK_PANE_CLASS (klass)->show_chosen = stead_events_pane_show_chosen;
  STEAD_PICK_PANE_CLASS (klass)->show_none = stead_events_pane_show_none;
}

static void
stead_events_pane_init (SteadEventsPane *self)
{
  SteadPane *pane = STEAD_PANE (self);

  stead_pick_pane_add_pick (STEAD_PICK_PANE (self), _("Event"));
  self->team = gtk_label_new (NULL);
  gtk_label_set_xalign (GTK_LABEL (self->team), 0);
  gtk_label_set_wrap (GTK_LABEL (self->team), TRUE);
  stead_pane_add_head (pane, self->team);
  stead_pane_add_head (pane, stead_why_box_new_low (&self->whys));
  self->table = stead_pane_add_table (pane, _("What the event needs"));
  stead_table_add_column (self->table, C_("column of needs", "State"), FALSE, FALSE, state_text, NULL, NULL, self);
  stead_table_add_column (self->table, C_("column of needs", "What"), FALSE, TRUE, what_text, NULL, NULL, self);
  stead_table_add_column (self->table, C_("column of needs", "What to do"), FALSE, TRUE, lack_text, NULL, NULL, self);
  stead_table_set_empty (self->table, _("What an event asks for stands here, and what is lacking yet. Enter an event "
                                        "first."));
  stead_table_set_activate (self->table, row_cb, self);
  add_chart (self);
  stead_pane_add_button (pane, _("Practice score…"), G_CALLBACK (score_cb));
  stead_pane_add_button (pane, _("Packet of the event"), G_CALLBACK (packet_cb));
  stead_pane_add_button (pane, _("Team…"), G_CALLBACK (member_cb));
  stead_pane_add_button (pane, _("Add a need…"), G_CALLBACK (need_cb));
  stead_pane_add_button (pane, _("Mark ready or lacking"), G_CALLBACK (mark_cb));
  stead_pane_add_button (pane, _("Change the event…"), G_CALLBACK (edit_cb));
  stead_pane_add_button (pane, _("New event…"), G_CALLBACK (new_cb));
}
