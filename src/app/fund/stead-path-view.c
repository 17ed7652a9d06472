/* stead-path-view.c - when a build is paid for: the fan of its money, and what helps most.
 *
 * The path to the goal takes a while: it runs in a thread, and is stopped when another
 * one begins.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "answer/stead-build-path.h"
#include "app/fund/stead-path-view.h"
#include "app/make/stead-make-parts.h"
#include "app/stead-chart-area.h"
#include "app/stead-ui.h"
#include "app/stead-why-box.h"
#include "core/stead-money.h"
#include "paper/stead-build-figure.h"

#define PATHS 20000

struct _SteadPathView
{
  GtkWidget         parent_instance;

  SteadDesk        *desk;        /* (nullable): none before it is shown, and after it is gone */
  GCancellable     *running;     /* (nullable): of the path as planned */
  GCancellable     *trying;      /* (nullable): of the path at the handle */
  SteadBuildPath   *base;        /* (nullable): as planned, not run; what the handle varies */
  SteadFundFigure  *figure;      /* (nullable): of the chart */

  GtkScale         *handle;      /* percent that each sale clears of what is planned */
  GtkWidget        *handle_row;
  GtkLabel         *sentence, *handle_text, *next, *back, *more, *goods, *steps_sentence;
  SteadChartArea   *fan;
  GtkWidget        *tries, *back_card, *steps;
  SteadWhyBox      *whys;
  gboolean          busy;        /* a run for the handle is under way */
  gboolean          again;       /* the handle has moved meanwhile */
};

G_DEFINE_FINAL_TYPE (SteadPathView, stead_path_view, GTK_TYPE_WIDGET)

/* --- the chart ------------------------------------------------------------------------ */

static void
fan_paint (cairo_t              *cr,
           const SteadDrawStyle *style,
           double                width,
           double                height,
           gpointer              data)
{
  SteadPathView *self = data;
  SteadFundLayout layout;

  if (self->figure == NULL || self->figure->path.n == 0)
    return;
  stead_fund_chart_layout (cr, &self->figure->path, &self->figure->words, style, width, height, &layout);
  stead_fund_chart_paint (cr, &self->figure->path, &self->figure->words, style, &layout);
}

static char *
point_text (SteadPathView *self,
            int            i)
{
  const SteadFundPoint *point = &self->figure->points[i];
  g_autofree char *day = stead_day_format (point->day, STEAD_DAY_STYLE_MEDIUM);
  g_autofree char *likely = stead_money_format (stead_money_round (point->wide.likely), self->figure->currency);
  g_autofree char *chance = stead_words_percent (self->figure->chances[i], 0);

  /* Translators: a day, the money that is likely there by then, chance that the goal is reached. */
  return g_strdup_printf (_("%s: about %s; chance %s"), day, likely, chance);
}

static void
lay (SteadPathView   *self,
     SteadFundLayout *layout)
{
  cairo_surface_t *surface = cairo_recording_surface_create (CAIRO_CONTENT_ALPHA, NULL);
  cairo_t *cr = cairo_create (surface);
  SteadDrawStyle style;

  stead_chart_area_get_style (self->fan, self->figure->currency, &style);
  stead_fund_chart_layout (cr, &self->figure->path, &self->figure->words, &style,
                           gtk_widget_get_width (GTK_WIDGET (self->fan)), gtk_widget_get_height (GTK_WIDGET (self->fan)), layout);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
}

static char *
fan_hint (double   x,
          double   y,
          gpointer data)
{
  SteadPathView *self = data;
  SteadFundLayout layout;
  int nearest;

  if (self->figure == NULL || self->figure->path.n == 0)
    return NULL;
  lay (self, &layout);
  nearest = stead_fund_chart_nearest (&layout, &self->figure->path, x);
  return nearest < 0 ? NULL : point_text (self, nearest);
}

static char *
fan_step (int       index,
          double   *x,
          double   *y,
          gpointer  data)
{
  SteadPathView *self = data;
  SteadFundLayout layout;

  if (self->figure == NULL || index < 0 || index >= (int) self->figure->path.n)
    return NULL;
  lay (self, &layout);
  stead_fund_chart_point (&layout, &self->figure->path, index, x, y);
  return point_text (self, index);
}

/* --- what is shown --------------------------------------------------------------------- */

static void
show_tries (SteadPathView        *self,
            const SteadBuildPath *path)
{
  stead_make_clear (self->tries);
  for (guint i = 0; i < path->tries->len; i++)
    {
      const SteadBuildTry *try = path->tries->pdata[i];
      /* Translators: something that would help, and what it does: "One more market: 9 days earlier". */
      g_autofree char *text = g_strdup_printf (_("%u. %s: %s"), i + 1, try->text, try->effect);
      GtkWidget *label = stead_make_label (text, NULL);

      gtk_label_set_max_width_chars (GTK_LABEL (label), 44);
      gtk_box_append (GTK_BOX (self->tries), label);
    }
  if (path->tries->len == 0)
    gtk_box_append (GTK_BOX (self->tries), stead_make_label (_("There is nothing to try yet."), "soft"));
}

/* One row of a table: the first text left, the others right. */
static void
add_row (GtkWidget          *grid,
         int                 row,
         const char         *css,
         const char * const *texts)
{
  for (int i = 0; texts[i] != NULL; i++)
    {
      GtkWidget *label = i == 0 ? stead_make_label (texts[i], css) : stead_make_figure (texts[i], css);

      if (i == 0)
        gtk_widget_set_hexpand (label, TRUE);
      else
        gtk_widget_set_valign (label, GTK_ALIGN_START);
      gtk_grid_attach (GTK_GRID (grid), label, i, row, 1, 1);
    }
}

static void
show_steps (SteadPathView        *self,
            const SteadBuildPath *path)
{
  stead_make_say (self->steps_sentence, path->steps_sentence, TRUE);
  stead_make_clear (self->steps);
  add_row (self->steps, 0, "soft", (const char *[]) { _("What"), _("Days"), _("Can begin"), _("Begin by"), _("Done by"),
                                                      _("Days to spare"), NULL });
  for (guint i = 0; i < path->steps->len; i++)
    {
      const SteadBuildStep *step = path->steps->pdata[i];
      g_auto(GStrv) cells = stead_build_step_cells (step);

      add_row (self->steps, (int) i + 1, step->decides ? "strong" : NULL, (const char * const *) cells);
    }
  gtk_widget_set_visible (self->back_card, path->steps->len > 0);
}

static double
handle_percent (SteadPathView *self)
{
  return gtk_range_get_value (GTK_RANGE (self->handle));
}

static void
show_handle (SteadPathView *self)
{
  int percent = (int) lround (handle_percent (self));
  g_autofree char *text = percent == 100 ? g_strdup (_("Each sale clears what is planned. Move the handle: what if it is more or less?"))
                          /* Translators: a number of percent. */
                          : g_strdup_printf (_("If each sale clears %d%% of what is planned:"), percent);

  gtk_label_set_text (self->handle_text, text);
}

/* The fan and its dates; what the rest of the page says stays as planned. */
static void
show_fan (SteadPathView        *self,
          const SteadBuildPath *path)
{
  g_autofree char *plain = stead_words_plain (path->sentence);

  g_clear_pointer (&self->figure, stead_fund_figure_free);
  self->figure = stead_fund_figure_new (path);
  stead_make_say (self->sentence, path->sentence, TRUE);
  gtk_widget_set_visible (GTK_WIDGET (self->fan), path->events->len > 0 && path->goal_cents > 0);
  gtk_widget_set_visible (self->handle_row, gtk_widget_get_visible (GTK_WIDGET (self->fan)));
  stead_chart_area_describe (self->fan, _("Money over time"), plain);
  gtk_widget_queue_draw (GTK_WIDGET (self->fan));
}

static void
show_path (SteadPathView        *self,
           const SteadBuildPath *path)
{
  g_autoptr(GPtrArray) whys = NULL;

  show_fan (self, path);
  stead_make_say (self->next, path->next_sentence != NULL ? path->next_sentence : _("No sale is planned in time."), TRUE);
  stead_make_say (self->back, path->back_sentence, TRUE);
  stead_make_say (self->more, path->more_sentence, TRUE);
  stead_make_say (self->goods, path->goods_sentence, FALSE);
  show_tries (self, path);
  show_steps (self, path);
  whys = stead_build_path_whys (path);
  stead_why_box_set (self->whys, whys);
}

/* --- the thread -------------------------------------------------------------------------- */

static void
run_thread (GTask        *task,
            gpointer      source,
            gpointer      data,
            GCancellable *cancellable)
{
  GError *error = NULL;

  if (stead_build_path_run (data, PATHS, cancellable, &error))
    g_task_return_boolean (task, TRUE);
  else
    g_task_return_error (task, error);
}

static void handle_cb (SteadPathView *self);

static void
ran_cb (GObject      *source,
        GAsyncResult *result,
        gpointer      data)
{
  g_autoptr(GError) error = NULL;

  /* Stopped: another one is on its way, or the page is gone. */
  if (!g_task_propagate_boolean (G_TASK (result), &error) || STEAD_PATH_VIEW (source)->desk == NULL)
    return;
  show_path (STEAD_PATH_VIEW (source), g_task_get_task_data (G_TASK (result)));
  if (handle_percent (STEAD_PATH_VIEW (source)) != 100)
    handle_cb (STEAD_PATH_VIEW (source));
}

static void
what_if_thread (GTask        *task,
                gpointer      source,
                gpointer      data,
                GCancellable *cancellable)
{
  GError *error = NULL;

  if (stead_build_path_run_dates (data, PATHS, cancellable, &error))
    g_task_return_boolean (task, TRUE);
  else
    g_task_return_error (task, error);
}

static void
what_if_cb (GObject      *source,
            GAsyncResult *result,
            gpointer      data)
{
  SteadPathView *self = STEAD_PATH_VIEW (source);
  g_autoptr(GError) error = NULL;

  self->busy = FALSE;
  if (self->desk == NULL)
    return;
  /* Stopped: the path as planned is on its way. */
  if (g_task_propagate_boolean (G_TASK (result), &error))
    show_fan (self, g_task_get_task_data (G_TASK (result)));
  if (self->again)
    handle_cb (self);
}

static void
stop (SteadPathView *self)
{
  if (self->running != NULL)
    g_cancellable_cancel (self->running);
  if (self->trying != NULL)
    g_cancellable_cancel (self->trying);
  g_clear_object (&self->running);
  g_clear_object (&self->trying);
}

/* The fan follows the handle.  One run at a time: where the handle is when it ends is the
 * next one, so that a slow machine shows fewer steps, but always the last. */
static void
handle_cb (SteadPathView *self)
{
  g_autoptr(GTask) task = NULL;

  show_handle (self);
  if (self->base == NULL)
    return;
  self->again = self->busy;
  if (self->busy)
    return;
  self->busy = TRUE;
  g_clear_object (&self->trying);
  self->trying = g_cancellable_new ();
  task = g_task_new (self, self->trying, what_if_cb, NULL);
  g_task_set_check_cancellable (task, TRUE);
  g_task_set_task_data (task, stead_build_path_what_if (self->base, handle_percent (self) / 100),
                        (GDestroyNotify) stead_build_path_free);
  g_task_run_in_thread (task, what_if_thread);
}

void
stead_path_view_show (SteadPathView          *self,
                      SteadDesk              *desk,
                      const SteadBuildAnswer *answer)
{
  g_autoptr(SteadBuildPath) path = NULL;
  g_autoptr(GTask) task = NULL;

  g_return_if_fail (STEAD_IS_PATH_VIEW (self) && STEAD_IS_DESK (desk));
  stop (self);
  g_set_object (&self->desk, desk);
  path = stead_build_path_new (stead_desk_get_store (desk), answer, NULL);
  if (path == NULL)
    return;
  g_clear_pointer (&self->base, stead_build_path_free);
  self->base = stead_build_path_what_if (path, 1);
  gtk_range_set_value (GTK_RANGE (self->handle), 100);
  stop (self);
  self->again = FALSE;
  self->running = g_cancellable_new ();
  task = g_task_new (self, self->running, ran_cb, NULL);
  g_task_set_check_cancellable (task, TRUE);
  g_task_set_task_data (task, g_steal_pointer (&path), (GDestroyNotify) stead_build_path_free);
  g_task_run_in_thread (task, run_thread);
}

/* --- the object --------------------------------------------------------------------------- */

static void
stead_path_view_dispose (GObject *object)
{
  SteadPathView *self = STEAD_PATH_VIEW (object);

  stop (self);
  g_clear_object (&self->desk);
  gtk_widget_dispose_template (GTK_WIDGET (self), STEAD_TYPE_PATH_VIEW);
  stead_ui_drop_children (GTK_WIDGET (self));
  g_clear_pointer (&self->figure, stead_fund_figure_free);
  g_clear_pointer (&self->base, stead_build_path_free);
  G_OBJECT_CLASS (stead_path_view_parent_class)->dispose (object);
}

static void
stead_path_view_class_init (SteadPathViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (STEAD_TYPE_CHART_AREA);
  G_OBJECT_CLASS (klass)->dispose = stead_path_view_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class, STEAD_UI ("fund/stead-path-view.ui"));
  gtk_widget_class_bind_template_child (widget_class, SteadPathView, sentence);
  gtk_widget_class_bind_template_child (widget_class, SteadPathView, handle);
  gtk_widget_class_bind_template_child (widget_class, SteadPathView, handle_row);
  gtk_widget_class_bind_template_child (widget_class, SteadPathView, handle_text);
  gtk_widget_class_bind_template_callback (widget_class, handle_cb);
  gtk_widget_class_bind_template_child (widget_class, SteadPathView, next);
  gtk_widget_class_bind_template_child (widget_class, SteadPathView, back);
  gtk_widget_class_bind_template_child (widget_class, SteadPathView, more);
  gtk_widget_class_bind_template_child (widget_class, SteadPathView, goods);
  gtk_widget_class_bind_template_child (widget_class, SteadPathView, back_card);
  gtk_widget_class_bind_template_child (widget_class, SteadPathView, steps_sentence);
  gtk_widget_class_bind_template_child (widget_class, SteadPathView, steps);
  gtk_widget_class_bind_template_child (widget_class, SteadPathView, fan);
  gtk_widget_class_bind_template_child (widget_class, SteadPathView, tries);
}

static void
stead_path_view_init (SteadPathView *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_box_append (GTK_BOX (gtk_widget_get_parent (self->handle_row)), stead_why_box_new_folded (&self->whys));
  show_handle (self);
  stead_chart_area_set_paint (self->fan, fan_paint, fan_hint, self);
  stead_chart_area_set_step (self->fan, fan_step);
  stead_chart_area_set_file_name (self->fan, "fund");
}
