/* stead-more-seasons.c - many more seasons, drawn beside the window.
 *
 * The seasons are drawn in threads of their own out of a copy of the ranges, so that handles
 * stay free; turning one stops the draw.  Nothing is taken of a draw that was stopped.
 */
#include "config.h"

#include "app/price/stead-more-seasons.h"

#include <glib/gi18n-lib.h>

#include "app/price/stead-view.h"
#include "app/stead-ui.h"

#define LOOK_MS 50

struct _SteadMoreSeasons
{
  GtkWidget      parent_instance;

  SteadHowSure  *answer;       /* (nullable) (transfer none) */
  GtkWidget     *box, *said, *draw, *stop, *progress;
  GTask         *task;         /* (nullable): the draw under way */
  guint          look_id;
};

enum { DRAWN, N_SIGNALS };
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (SteadMoreSeasons, stead_more_seasons, GTK_TYPE_WIDGET)

typedef struct
{
  SteadSeasonDraws *draws;
  gint              done;      /* blocks; atomic */
} Draw;

static void
draw_free (gpointer data)
{
  Draw *draw = data;

  stead_season_draws_free (draw->draws);
  g_free (draw);
}

/* --- what is seen -------------------------------------------------------------------------- */

static void
show_state (SteadMoreSeasons *self,
            gboolean          stopped)
{
  gboolean under_way = self->task != NULL;
  guint n = self->answer != NULL && self->answer->solved ? self->answer->n_draws : 0;
  g_autofree char *count = stead_number_format (n, 0);
  g_autofree char *said = stopped ? g_strdup_printf (ngettext ("Stopped. The figures are of %s season.",
                                                               "Stopped. The figures are of %s seasons.", n), count)
                                  : g_strdup_printf (ngettext ("The figures are of %s season.",
                                                               "The figures are of %s seasons.", n), count);

  gtk_label_set_text (GTK_LABEL (self->said), under_way ? _("Drawing more seasons…") : said);
  gtk_widget_set_sensitive (self->draw, !under_way && n > 0 && n < STEAD_HOW_SURE_MANY_DRAWS);
  gtk_widget_set_sensitive (self->stop, under_way);
  gtk_progress_bar_set_fraction (GTK_PROGRESS_BAR (self->progress), n == STEAD_HOW_SURE_MANY_DRAWS ? 1 : 0);
}

static gboolean
look_cb (gpointer data)
{
  SteadMoreSeasons *self = data;
  Draw *draw = g_task_get_task_data (self->task);

  gtk_progress_bar_set_fraction (GTK_PROGRESS_BAR (self->progress),
                                 (double) g_atomic_int_get (&draw->done) / stead_season_draws_get_n_blocks (draw->draws));
  return G_SOURCE_CONTINUE;
}

/* --- the draw ------------------------------------------------------------------------------- */

static void
forget (SteadMoreSeasons *self)
{
  if (self->look_id != 0)
    g_source_remove (self->look_id);
  self->look_id = 0;
  if (self->task != NULL)
    g_cancellable_cancel (g_task_get_cancellable (self->task));
  g_clear_object (&self->task);
}

static gboolean
is_stopped (gpointer data)
{
  return g_cancellable_is_cancelled (data);
}

static void
draw_in_thread (GTask        *task,
                gpointer      source,
                gpointer      data,
                GCancellable *cancellable)
{
  Draw *draw = data;

  g_task_return_boolean (task, stead_season_draws_run_all (draw->draws, is_stopped, cancellable, &draw->done));
}

static void
done_cb (GObject      *source,
         GAsyncResult *result,
         gpointer      data)
{
  SteadMoreSeasons *self = STEAD_MORE_SEASONS (source);
  Draw *draw = g_task_get_task_data (G_TASK (result));

  /* One that was forgotten has no say any more. */
  if (self->task != G_TASK (result) || !g_task_propagate_boolean (G_TASK (result), NULL))
    return;
  stead_how_sure_take_many (self->answer, draw->draws);
  forget (self);
  show_state (self, FALSE);
  g_signal_emit (self, signals[DRAWN], 0);
}

static void
draw_cb (SteadMoreSeasons *self)
{
  g_autoptr(GCancellable) cancellable = g_cancellable_new ();
  SteadSeasonDraws *draws = self->answer != NULL ? stead_how_sure_many_new (self->answer) : NULL;
  Draw *draw;

  if (draws == NULL)
    return;
  forget (self);
  draw = g_new0 (Draw, 1);
  draw->draws = draws;
  self->task = g_task_new (self, cancellable, done_cb, NULL);
  g_task_set_task_data (self->task, draw, draw_free);
  self->look_id = g_timeout_add (LOOK_MS, look_cb, self);
  show_state (self, FALSE);
  g_task_run_in_thread (self->task, draw_in_thread);
}

static void
stop_cb (SteadMoreSeasons *self)
{
  forget (self);
  show_state (self, TRUE);
}

/* --- widget ----------------------------------------------------------------------------------- */

static void
stead_more_seasons_dispose (GObject *object)
{
  forget (STEAD_MORE_SEASONS (object));
  stead_ui_drop_children (GTK_WIDGET (object));
  G_OBJECT_CLASS (stead_more_seasons_parent_class)->dispose (object);
}

static void
stead_more_seasons_class_init (SteadMoreSeasonsClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = stead_more_seasons_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (klass), GTK_ACCESSIBLE_ROLE_GROUP);
  signals[DRAWN] = g_signal_new ("drawn", STEAD_TYPE_MORE_SEASONS, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                 G_TYPE_NONE, 0);
}

static void
stead_more_seasons_init (SteadMoreSeasons *self)
{
  g_autofree char *many = stead_number_format (STEAD_HOW_SURE_MANY_DRAWS, 0);
  /* Translators: how many seasons are drawn by the press of the button. */
  g_autofree char *draw = g_strdup_printf (_("Draw %s"), many);
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);

  self->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
  self->said = stead_view_note ("");
  gtk_box_append (GTK_BOX (self->box), self->said);
  self->progress = gtk_progress_bar_new ();
  stead_ui_name (self->progress, _("How much of it is drawn"));
  gtk_box_append (GTK_BOX (self->box), self->progress);
  self->draw = gtk_button_new_with_label (draw);
  gtk_widget_set_tooltip_text (self->draw, _("The more seasons, the less is luck in a small chance"));
  gtk_widget_set_hexpand (self->draw, TRUE);
  g_signal_connect_swapped (self->draw, "clicked", G_CALLBACK (draw_cb), self);
  gtk_box_append (GTK_BOX (row), self->draw);
  self->stop = gtk_button_new_with_label (_("Stop"));
  g_signal_connect_swapped (self->stop, "clicked", G_CALLBACK (stop_cb), self);
  gtk_box_append (GTK_BOX (row), self->stop);
  gtk_box_append (GTK_BOX (self->box), row);
  show_state (self, FALSE);
}

GtkWidget *
stead_more_seasons_new (void)
{
  return g_object_new (STEAD_TYPE_MORE_SEASONS, NULL);
}

void
stead_more_seasons_show (SteadMoreSeasons *self,
                         SteadHowSure     *answer)
{
  g_return_if_fail (STEAD_IS_MORE_SEASONS (self));

  forget (self);
  self->answer = answer;
  show_state (self, FALSE);
}
