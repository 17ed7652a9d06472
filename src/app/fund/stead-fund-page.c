/* stead-fund-page.c - the place Fund: what is to be built, what it takes, and who pays.
 *
 * The path to the goal takes a while: it runs in a thread, and is stopped when the farm
 * has changed or another build is chosen.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "answer/stead-build-path.h"
#include "app/fund/stead-bill-table.h"
#include "app/fund/stead-fund-dialogs.h"
#include "app/fund/stead-fund-page.h"
#include "app/fund/stead-outline-view.h"
#include "app/stead-chart-area.h"
#include "app/stead-paper-dialog.h"
#include "app/stead-ui.h"
#include "app/stead-why-box.h"
#include "app/stead-wrap-layout.h"
#include "core/stead-money.h"
#include "paper/stead-build-figure.h"

#define PATHS 20000

struct _SteadFundPage
{
  SteadPage         parent_instance;

  GArray           *ids;         /* of gint64, in the order of the choice */
  gint64            build_id;    /* shown; 0: none */
  gboolean          quiet;       /* the code fills the choice, not the person */
  gint64            goal_cents;
  GCancellable     *running;     /* (nullable) */
  SteadFundFigure  *figure;      /* (nullable): of the chart */

  GtkDropDown      *choice;
  GtkWidget        *with_build;  /* all that needs one */
  GtkLabel         *sentence, *cautions, *rooms, *money, *path, *back;
  SteadOutlineView    *plan;
  SteadBillTable   *bill;
  SteadChartArea   *fan;
  GtkBox           *tries;
  SteadWhyBox      *why;
};

G_DEFINE_FINAL_TYPE (SteadFundPage, stead_fund_page, STEAD_TYPE_PAGE)

static SteadDesk *
desk_of (SteadFundPage *self)
{
  return stead_page_get_desk (STEAD_PAGE (self));
}

/* --- the path --------------------------------------------------------------------------- */

static void
fan_paint (cairo_t              *cr,
           const SteadDrawStyle *style,
           double                width,
           double                height,
           gpointer              data)
{
  SteadFundPage *self = data;
  SteadFundLayout layout;

  if (self->figure == NULL || self->figure->path.n == 0)
    return;
  stead_fund_chart_layout (cr, &self->figure->path, &self->figure->words, style, width, height, &layout);
  stead_fund_chart_paint (cr, &self->figure->path, &self->figure->words, style, &layout);
}

static char *
point_text (SteadFundPage *self,
            int            i)
{
  const SteadFundPoint *point = &self->figure->points[i];
  g_autofree char *day = stead_day_format (point->day, STEAD_DAY_STYLE_MEDIUM);
  g_autofree char *likely = stead_money_format (stead_money_round (point->wide.likely), self->figure->currency);
  g_autofree char *chance = stead_words_percent (self->figure->chances[i], 0);

  /* Translators: a day, the money that is likely there by then, chance that the goal is reached. */
  return g_strdup_printf (_("%s: about %s; chance %s"), day, likely, chance);
}

static char *
fan_step (int       index,
          double   *x,
          double   *y,
          gpointer  data)
{
  SteadFundPage *self = data;

  if (self->figure == NULL || index < 0 || index >= (int) self->figure->path.n)
    return NULL;
  *x = 0;
  *y = 0;
  return point_text (self, index);
}

static void
clear_box (GtkBox *box)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (box))) != NULL)
    gtk_box_remove (box, child);
}

static void
show_tries (SteadFundPage        *self,
            const SteadBuildPath *path)
{
  clear_box (self->tries);
  for (guint i = 0; i < path->tries->len; i++)
    {
      const SteadBuildTry *try = path->tries->pdata[i];
      /* Translators: something that would help, and what it does: "One more market: 9 days earlier". */
      g_autofree char *text = g_strdup_printf (_("%u. %s: %s"), i + 1, try->text, try->effect);
      GtkWidget *label = gtk_label_new (text);

      gtk_label_set_xalign (GTK_LABEL (label), 0);
      stead_ui_wrap (GTK_LABEL (label));
      gtk_box_append (self->tries, label);
    }
}

static void
show_path (SteadFundPage        *self,
           const SteadBuildPath *path)
{
  g_autofree char *plain = stead_words_plain (path->sentence);

  g_clear_pointer (&self->figure, stead_fund_figure_free);
  self->figure = stead_fund_figure_new (path);
  gtk_label_set_markup (self->path, path->sentence);
  gtk_label_set_markup (self->back, path->back_sentence != NULL ? path->back_sentence : "");
  gtk_widget_set_visible (GTK_WIDGET (self->back), path->back_sentence != NULL);
  gtk_widget_set_visible (GTK_WIDGET (self->fan), path->events->len > 0 && path->goal_cents > 0);
  stead_chart_area_describe (self->fan, _("Money over time"), plain);
  gtk_widget_queue_draw (GTK_WIDGET (self->fan));
  show_tries (self, path);
}

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

static void
ran_cb (GObject      *source,
        GAsyncResult *result,
        gpointer      data)
{
  g_autoptr(GError) error = NULL;

  /* Stopped: another one is on its way, or the page is gone. */
  if (!g_task_propagate_boolean (G_TASK (result), &error) || STEAD_FUND_PAGE (source)->ids == NULL)
    return;
  show_path (STEAD_FUND_PAGE (source), g_task_get_task_data (G_TASK (result)));
}

static void
stop (SteadFundPage *self)
{
  if (self->running != NULL)
    g_cancellable_cancel (self->running);
  g_clear_object (&self->running);
}

static void
start_path (SteadFundPage          *self,
            const SteadBuildAnswer *answer)
{
  g_autoptr(SteadBuildPath) path = stead_build_path_new (stead_page_get_store (STEAD_PAGE (self)), answer, NULL);
  g_autoptr(GTask) task = NULL;

  stop (self);
  if (path == NULL)
    return;
  self->running = g_cancellable_new ();
  task = g_task_new (self, self->running, ran_cb, NULL);
  g_task_set_check_cancellable (task, TRUE);
  g_task_set_task_data (task, g_steal_pointer (&path), (GDestroyNotify) stead_build_path_free);
  g_task_run_in_thread (task, run_thread);
}

/* --- what is shown ------------------------------------------------------------------------ */

static void
show_rooms (SteadFundPage          *self,
            const SteadBuildAnswer *answer)
{
  g_autoptr(GString) text = g_string_new (NULL);

  for (guint i = 0; i < answer->rooms->len; i++)
    {
      const SteadBuildRoom *room = answer->rooms->pdata[i];

      if (text->len > 0)
        g_string_append_c (text, '\n');
      if (room->has == NULL)
        /* Translators: what animals need, and how much. */
        g_string_append_printf (text, _("%s: %s"), room->what, room->need);
      else if (room->is_short)
        /* Translators: room for animals, what is needed, what the plan has. */
        g_string_append_printf (text, _("⚠ %s: needs %s, has %s"), room->what, room->need, room->has);
      else
        g_string_append_printf (text, _("✓ %s: needs %s, has %s"), room->what, room->need, room->has);
    }
  gtk_label_set_text (self->rooms, text->str);
  gtk_widget_set_visible (GTK_WIDGET (self->rooms), text->len > 0);
}

static void
show_cautions (SteadFundPage          *self,
               const SteadBuildAnswer *answer)
{
  g_autoptr(GString) text = g_string_new (NULL);

  for (guint i = 0; i < answer->cautions->len; i++)
    g_string_append_printf (text, i == 0 ? "%s" : "\n%s", (const char *) answer->cautions->pdata[i]);
  gtk_label_set_text (self->cautions, text->str);
  gtk_widget_set_visible (GTK_WIDGET (self->cautions), text->len > 0);
}

static void
show_answer (SteadFundPage    *self,
             SteadBuildAnswer *answer)
{
  g_autoptr(GPtrArray) whys = stead_build_answer_whys (answer);

  self->goal_cents = answer->goal_cents;
  gtk_label_set_markup (self->sentence, answer->sentence);
  gtk_label_set_markup (self->money, answer->money_sentence);
  show_rooms (self, answer);
  show_cautions (self, answer);
  stead_why_box_set (self->why, whys);
}

static void
show_build (SteadFundPage *self)
{
  SteadStore *store = stead_page_get_store (STEAD_PAGE (self));
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadBuildAnswer) answer = NULL;

  gtk_widget_set_visible (self->with_build, self->build_id != 0);
  if (self->build_id == 0)
    {
      stop (self);
      gtk_label_set_text (self->sentence, _("A pen, a poultry run or a hoop house begins here: what it takes, what it costs, and when it is paid for. Press “New build…”."));
      return;
    }
  answer = stead_build_answer_new (store, self->build_id, &error);
  if (answer == NULL)
    {
      gtk_label_set_text (self->sentence, error->message);
      return;
    }
  show_answer (self, answer);
  stead_outline_view_set (self->plan, answer->build, answer->farm->units);
  start_path (self, answer);
  stead_bill_table_set (self->bill, desk_of (self), answer);
}

/* The one chosen before, if it is still there; else the first. */
static void
stead_fund_page_refresh (SteadPage *page)
{
  SteadFundPage *self = STEAD_FUND_PAGE (page);
  g_autoptr(GPtrArray) builds = stead_build_repo_list (stead_page_get_store (page), NULL);
  g_autoptr(GtkStringList) names = gtk_string_list_new (NULL);
  guint chosen = 0;

  g_array_set_size (self->ids, 0);
  for (guint i = 0; builds != NULL && i < builds->len; i++)
    {
      const SteadBuild *build = builds->pdata[i];

      gtk_string_list_append (names, build->name);
      g_array_append_val (self->ids, build->id);
      if (build->id == self->build_id)
        chosen = i;
    }
  self->build_id = self->ids->len > 0 ? g_array_index (self->ids, gint64, chosen) : 0;
  self->quiet = TRUE;
  gtk_drop_down_set_model (self->choice, G_LIST_MODEL (names));
  if (self->ids->len > 0)
    gtk_drop_down_set_selected (self->choice, chosen);
  self->quiet = FALSE;
  gtk_widget_set_visible (GTK_WIDGET (self->choice), self->ids->len > 1);
  show_build (self);
}

/* --- what is done ------------------------------------------------------------------------- */

static void
chosen_cb (SteadFundPage *self)
{
  guint i = gtk_drop_down_get_selected (self->choice);

  if (self->quiet || i >= self->ids->len)
    return;
  self->build_id = g_array_index (self->ids, gint64, i);
  show_build (self);
}

static gboolean
save_act (SteadStore  *store,
          gpointer     data,
          GError     **error)
{
  return stead_build_repo_save (store, data, error);
}

static void
moving_cb (SteadFundPage *self)
{
  const SteadBuild *build = stead_outline_view_get (self->plan);
  g_autoptr(SteadBuildAnswer) answer = build == NULL ? NULL
    : stead_build_answer_draw (stead_page_get_store (STEAD_PAGE (self)), build, NULL);

  if (answer != NULL)
    show_answer (self, answer);
}

static void
drawn_cb (SteadFundPage *self)
{
  g_autoptr(SteadBuild) build = stead_build_copy (stead_outline_view_get (self->plan));
  g_autoptr(GError) error = NULL;
  /* Translators: name of a step to undo; name of a build. */
  g_autofree char *step = g_strdup_printf (_("plan of “%s”"), build->name);

  if (stead_desk_act (desk_of (self), step, save_act, build, &error))
    return;
  stead_desk_say (desk_of (self), error->message, FALSE);
  show_build (self);
}

/* A corner in the middle of the longest side. */
static void
corner_cb (SteadFundPage *self)
{
  g_autoptr(SteadBuild) build = stead_build_repo_get (stead_page_get_store (STEAD_PAGE (self)), self->build_id, NULL);
  g_autoptr(GError) error = NULL;
  guint longest = 0;
  double most = 0;

  for (guint i = 0; build != NULL && i < build->corners->len; i++)
    {
      const SteadBuildCorner *a = &g_array_index (build->corners, SteadBuildCorner, i);
      const SteadBuildCorner *b = &g_array_index (build->corners, SteadBuildCorner, (i + 1) % build->corners->len);

      if (hypot (b->x_m - a->x_m, b->y_m - a->y_m) > most)
        {
          most = hypot (b->x_m - a->x_m, b->y_m - a->y_m);
          longest = i;
        }
    }
  if (!(most > 0))
    return;
  {
    const SteadBuildCorner *a = &g_array_index (build->corners, SteadBuildCorner, longest);
    const SteadBuildCorner *b = &g_array_index (build->corners, SteadBuildCorner, (longest + 1) % build->corners->len);
    SteadBuildCorner middle = { (a->x_m + b->x_m) / 2, (a->y_m + b->y_m) / 2, 0, 0 };

    g_array_insert_val (build->corners, longest + 1, middle);
  }
  /* A gate beyond the middle of the side belongs to its second half now. */
  for (guint i = 0; i < build->gates->len; i++)
    {
      SteadFenceGate *gate = &g_array_index (build->gates, SteadFenceGate, i);

      if (gate->side > longest || (gate->side == longest && gate->offset_m >= most / 2))
        {
          gate->offset_m -= gate->side == longest ? most / 2 : 0;
          gate->side++;
        }
    }
  if (!stead_desk_act (desk_of (self), _("a corner more"), save_act, build, &error))
    stead_desk_say (desk_of (self), error->message, FALSE);
}

static void
new_cb (SteadFundPage *self)
{
  stead_build_dialog_show (GTK_WIDGET (self), desk_of (self), 0);
}

static void
edit_cb (SteadFundPage *self)
{
  if (self->build_id != 0)
    stead_build_dialog_show (GTK_WIDGET (self), desk_of (self), self->build_id);
}

static void
pledge_cb (SteadFundPage *self)
{
  stead_pledge_dialog_show (GTK_WIDGET (self), desk_of (self), self->build_id, self->goal_cents);
}

static void
income_cb (SteadFundPage *self)
{
  stead_income_dialog_show (GTK_WIDGET (self), desk_of (self), self->build_id);
}

static void
paper (SteadFundPage *self,
       const char    *name)
{
  g_autoptr(SteadBuild) build = stead_build_repo_get (stead_page_get_store (STEAD_PAGE (self)), self->build_id, NULL);

  if (build != NULL)
    stead_paper_dialog_show (GTK_WIDGET (self), desk_of (self), name, build->name);
}

static void
proposal_cb (SteadFundPage *self)
{
  paper (self, "build-proposal");
}

static void
shopping_cb (SteadFundPage *self)
{
  paper (self, "shopping-list");
}

static void
donor_cb (SteadFundPage *self)
{
  paper (self, "donor-sheet");
}

static void
poster_cb (SteadFundPage *self)
{
  paper (self, "progress-poster");
}

/* --- the object --------------------------------------------------------------------------- */

static void
stead_fund_page_dispose (GObject *object)
{
  SteadFundPage *self = STEAD_FUND_PAGE (object);

  stop (self);
  stead_ui_drop_children (GTK_WIDGET (self));
  g_clear_pointer (&self->ids, g_array_unref);
  g_clear_pointer (&self->figure, stead_fund_figure_free);
  G_OBJECT_CLASS (stead_fund_page_parent_class)->dispose (object);
}

static void
stead_fund_page_class_init (SteadFundPageClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = stead_fund_page_dispose;
  STEAD_PAGE_CLASS (klass)->refresh = stead_fund_page_refresh;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
}

static GtkLabel *
add_label (GtkWidget  *box,
           const char *css)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  stead_ui_wrap (GTK_LABEL (label));
  if (css != NULL)
    gtk_widget_add_css_class (label, css);
  gtk_box_append (GTK_BOX (box), label);
  return GTK_LABEL (label);
}

static void
add_heading (GtkWidget  *box,
             const char *text)
{
  gtk_label_set_text (add_label (box, "heading"), text);
}

static void
add_buttons (SteadFundPage *self,
             GtkWidget     *box,
             ...)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  const char *label;
  va_list args;

  gtk_widget_set_layout_manager (row, g_object_new (STEAD_TYPE_WRAP_LAYOUT, NULL));
  va_start (args, box);
  while ((label = va_arg (args, const char *)) != NULL)
    {
      GtkWidget *button = gtk_button_new_with_label (label);

      g_signal_connect_swapped (button, "clicked", va_arg (args, GCallback), self);
      gtk_box_append (GTK_BOX (row), button);
    }
  va_end (args);
  gtk_box_append (GTK_BOX (box), row);
}

static GtkWidget *
new_card (GtkWidget *parent)
{
  GtkWidget *card = gtk_box_new (GTK_ORIENTATION_VERTICAL, 9);

  gtk_widget_add_css_class (card, "card");
  gtk_box_append (GTK_BOX (parent), card);
  return card;
}

static void
make_plan (SteadFundPage *self)
{
  GtkWidget *card = new_card (self->with_build);

  add_heading (card, _("What will it look like?"));
  self->plan = STEAD_OUTLINE_VIEW (stead_outline_view_new ());
  g_signal_connect_swapped (self->plan, "moving", G_CALLBACK (moving_cb), self);
  g_signal_connect_swapped (self->plan, "drawn", G_CALLBACK (drawn_cb), self);
  gtk_box_append (GTK_BOX (card), GTK_WIDGET (self->plan));
  self->rooms = add_label (card, NULL);
  add_buttons (self, card, _("Add a corner"), G_CALLBACK (corner_cb), NULL);
  self->cautions = add_label (card, "caution");
}

static void
make_money (SteadFundPage *self)
{
  GtkWidget *card = new_card (self->with_build);

  add_heading (card, _("When will it be paid for?"));
  self->money = add_label (card, NULL);
  self->path = add_label (card, NULL);
  self->fan = STEAD_CHART_AREA (stead_chart_area_new ());
  gtk_widget_set_size_request (GTK_WIDGET (self->fan), -1, 260);
  stead_chart_area_set_paint (self->fan, fan_paint, NULL, self);
  stead_chart_area_set_step (self->fan, fan_step);
  stead_chart_area_set_file_name (self->fan, "fund");
  gtk_box_append (GTK_BOX (card), GTK_WIDGET (self->fan));
  self->back = add_label (card, NULL);
  add_heading (card, _("What helps most?"));
  self->tries = GTK_BOX (gtk_box_new (GTK_ORIENTATION_VERTICAL, 3));
  gtk_box_append (GTK_BOX (card), GTK_WIDGET (self->tries));
  add_buttons (self, card, _("New pledge…"), G_CALLBACK (pledge_cb), _("Plan sales…"), G_CALLBACK (income_cb), NULL);
}

static void
stead_fund_page_init (SteadFundPage *self)
{
  GtkWidget *scroll = gtk_scrolled_window_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);
  GtkWidget *card;

  self->ids = g_array_new (FALSE, FALSE, sizeof (gint64));
  gtk_widget_set_margin_top (box, 12);
  gtk_widget_set_margin_bottom (box, 12);
  gtk_widget_set_margin_start (box, 18);
  gtk_widget_set_margin_end (box, 18);
  self->choice = GTK_DROP_DOWN (gtk_drop_down_new (NULL, NULL));
  gtk_widget_set_halign (GTK_WIDGET (self->choice), GTK_ALIGN_START);
  stead_ui_name (GTK_WIDGET (self->choice), _("Build"));
  g_signal_connect_swapped (self->choice, "notify::selected", G_CALLBACK (chosen_cb), self);
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->choice));
  self->sentence = add_label (box, "sentence");
  add_buttons (self, box, _("New build…"), G_CALLBACK (new_cb), NULL);
  self->with_build = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);
  gtk_box_append (GTK_BOX (box), self->with_build);
  add_buttons (self, self->with_build, _("Change build…"), G_CALLBACK (edit_cb), _("Proposal…"), G_CALLBACK (proposal_cb),
               _("Shopping list…"), G_CALLBACK (shopping_cb), _("Sheet for givers…"), G_CALLBACK (donor_cb),
               _("Poster…"), G_CALLBACK (poster_cb), NULL);
  make_plan (self);
  card = new_card (self->with_build);
  add_heading (card, _("What does it take?"));
  self->bill = STEAD_BILL_TABLE (stead_bill_table_new ());
  gtk_box_append (GTK_BOX (card), GTK_WIDGET (self->bill));
  make_money (self);
  self->why = STEAD_WHY_BOX (stead_why_box_new ());
  gtk_box_append (GTK_BOX (self->with_build), GTK_WIDGET (self->why));
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroll), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroll), box);
  gtk_widget_set_parent (scroll, GTK_WIDGET (self));
}
