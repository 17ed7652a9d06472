/* stead-fund-page.c - the place Fund: what is to be built, what it takes, and who pays.
 *
 * One build at a time, and of it one view: its plan, its bill, its money, its work, what
 * comes afterwards, and how all of it is worked out.
 */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/fund/stead-after-view.h"
#include "app/fund/stead-bill-view.h"
#include "app/fund/stead-drawing-view.h"
#include "app/fund/stead-fund-dialogs.h"
#include "app/fund/stead-fund-page.h"
#include "app/fund/stead-means-view.h"
#include "app/fund/stead-path-view.h"
#include "app/fund/stead-work-view.h"
#include "app/make/stead-make-parts.h"
#include "app/stead-chips.h"
#include "app/stead-paper-dialog.h"
#include "app/stead-ui.h"
#include "app/stead-why-box.h"
#include "app/stead-wrap-layout.h"

struct _SteadFundPage
{
  SteadPage         parent_instance;

  GArray           *ids;         /* of gint64, in the order of the choice */
  gint64            build_id;    /* shown; 0: none */
  gboolean          quiet;       /* the code fills the choice, not the person */

  GtkStack         *stack, *views;
  GtkDropDown      *choice;
  GtkLabel         *sentence;
  SteadChips       *chips;
  SteadDrawingView *plan;
  SteadBillView    *bill;
  SteadPathView    *path;
  SteadMeansView   *means;
  SteadWorkView    *work;
  SteadAfterView   *after;
  SteadWhyBox      *why;
};

G_DEFINE_FINAL_TYPE (SteadFundPage, stead_fund_page, STEAD_TYPE_PAGE)

/* In the order of the chips; chip ids count from 1. */
enum { PLAN = 1, BILL, MONEY, WORK, AFTER, WHY };

static const char * const names[] = { NULL, "plan", "bill", "money", "work", "after", "why" };

static SteadDesk *
desk_of (SteadFundPage *self)
{
  return stead_page_get_desk (STEAD_PAGE (self));
}

/* --- what is shown ------------------------------------------------------------------------ */

static void
show_whys (SteadFundPage          *self,
           const SteadBuildAnswer *answer)
{
  g_autoptr(GPtrArray) whys = stead_build_answer_whys (answer);
  SteadWhy *pledges = stead_build_answer_pledge_why (answer);

  if (pledges != NULL)
    g_ptr_array_add (whys, pledges);
  stead_why_box_set (self->why, whys);
}

/* Only the view that can be seen reads what it needs. */
static void
show_view (SteadFundPage    *self,
           SteadBuildAnswer *answer)
{
  SteadDesk *desk = desk_of (self);
  gint64 view = stead_chips_get (self->chips);

  gtk_stack_set_visible_child_name (self->views, names[CLAMP (view, PLAN, WHY)]);
  switch (view)
    {
    case BILL: stead_bill_view_show (self->bill, desk, answer); break;
    case MONEY:
      stead_path_view_show (self->path, desk, answer);
      stead_means_view_show (self->means, desk, answer);
      break;
    case WORK: stead_work_view_show (self->work, desk, answer); break;
    case AFTER: stead_after_view_show (self->after, desk, answer); break;
    case WHY: show_whys (self, answer); break;
    case PLAN:
    default: stead_drawing_view_show (self->plan, desk, answer); break;
    }
}

static void
show_build (SteadFundPage *self)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadBuildAnswer) answer = NULL;

  gtk_stack_set_visible_child_name (self->stack, self->build_id != 0 ? "build" : "empty");
  if (self->build_id == 0)
    return;
  answer = stead_build_answer_new (stead_page_get_store (STEAD_PAGE (self)), self->build_id, &error);
  if (answer == NULL)
    {
      gtk_label_set_text (self->sentence, error->message);
      return;
    }
  gtk_label_set_markup (self->sentence, answer->sentence);
  show_view (self, answer);
}

/* The one chosen before, if it is still there; else the first. */
static void
stead_fund_page_refresh (SteadPage *page)
{
  SteadFundPage *self = STEAD_FUND_PAGE (page);
  g_autoptr(GPtrArray) builds = stead_build_repo_list (stead_page_get_store (page), NULL);
  g_autoptr(GtkStringList) list = gtk_string_list_new (NULL);
  guint chosen = 0;

  g_array_set_size (self->ids, 0);
  for (guint i = 0; builds != NULL && i < builds->len; i++)
    {
      const SteadBuild *build = builds->pdata[i];

      gtk_string_list_append (list, build->name);
      g_array_append_val (self->ids, build->id);
      if (build->id == self->build_id)
        chosen = i;
    }
  self->build_id = self->ids->len > 0 ? g_array_index (self->ids, gint64, chosen) : 0;
  self->quiet = TRUE;
  gtk_drop_down_set_model (self->choice, G_LIST_MODEL (list));
  if (self->ids->len > 0)
    gtk_drop_down_set_selected (self->choice, chosen);
  self->quiet = FALSE;
  show_build (self);
}

static void
stead_fund_page_show (SteadPage   *page,
                      SteadTarget  target,
                      gint64       id)
{
  if (target != STEAD_TARGET_BUILD)
    return;
  STEAD_FUND_PAGE (page)->build_id = id;
  stead_page_invalidate (page);
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

static void
view_cb (SteadFundPage *self,
         gint64         view)
{
  show_build (self);
}

static void
moving_cb (SteadFundPage *self,
           const char    *markup)
{
  gtk_label_set_markup (self->sentence, markup);
}

static void
new_cb (SteadFundPage *self)
{
  stead_build_dialog_show (GTK_WIDGET (self), desk_of (self), 0);
}

static void
edit_cb (SteadFundPage *self)
{
  stead_build_dialog_show (GTK_WIDGET (self), desk_of (self), self->build_id);
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

  self->quiet = TRUE;
  gtk_widget_dispose_template (GTK_WIDGET (self), STEAD_TYPE_FUND_PAGE);
  stead_ui_drop_children (GTK_WIDGET (self));
  G_OBJECT_CLASS (stead_fund_page_parent_class)->dispose (object);
}

static void
stead_fund_page_finalize (GObject *object)
{
  g_array_unref (STEAD_FUND_PAGE (object)->ids);
  G_OBJECT_CLASS (stead_fund_page_parent_class)->finalize (object);
}

static void
bind_children (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_child (widget_class, SteadFundPage, stack);
  gtk_widget_class_bind_template_child (widget_class, SteadFundPage, views);
  gtk_widget_class_bind_template_child (widget_class, SteadFundPage, choice);
  gtk_widget_class_bind_template_child (widget_class, SteadFundPage, sentence);
  gtk_widget_class_bind_template_child (widget_class, SteadFundPage, chips);
  gtk_widget_class_bind_template_child (widget_class, SteadFundPage, plan);
  gtk_widget_class_bind_template_child (widget_class, SteadFundPage, bill);
  gtk_widget_class_bind_template_child (widget_class, SteadFundPage, path);
  gtk_widget_class_bind_template_child (widget_class, SteadFundPage, means);
  gtk_widget_class_bind_template_child (widget_class, SteadFundPage, work);
  gtk_widget_class_bind_template_child (widget_class, SteadFundPage, after);
  gtk_widget_class_bind_template_child (widget_class, SteadFundPage, why);
  gtk_widget_class_bind_template_callback (widget_class, chosen_cb);
  gtk_widget_class_bind_template_callback (widget_class, view_cb);
  gtk_widget_class_bind_template_callback (widget_class, moving_cb);
  gtk_widget_class_bind_template_callback (widget_class, new_cb);
  gtk_widget_class_bind_template_callback (widget_class, edit_cb);
  gtk_widget_class_bind_template_callback (widget_class, proposal_cb);
  gtk_widget_class_bind_template_callback (widget_class, shopping_cb);
  gtk_widget_class_bind_template_callback (widget_class, donor_cb);
  gtk_widget_class_bind_template_callback (widget_class, poster_cb);
}

static void
stead_fund_page_class_init (SteadFundPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (STEAD_TYPE_CHIPS);
  g_type_ensure (STEAD_TYPE_WRAP_LAYOUT);
  g_type_ensure (STEAD_TYPE_DRAWING_VIEW);
  g_type_ensure (STEAD_TYPE_BILL_VIEW);
  g_type_ensure (STEAD_TYPE_PATH_VIEW);
  g_type_ensure (STEAD_TYPE_MEANS_VIEW);
  g_type_ensure (STEAD_TYPE_WORK_VIEW);
  g_type_ensure (STEAD_TYPE_AFTER_VIEW);
  g_type_ensure (STEAD_TYPE_WHY_BOX);
  G_OBJECT_CLASS (klass)->dispose = stead_fund_page_dispose;
  G_OBJECT_CLASS (klass)->finalize = stead_fund_page_finalize;
  STEAD_PAGE_CLASS (klass)->refresh = stead_fund_page_refresh;
  STEAD_PAGE_CLASS (klass)->show = stead_fund_page_show;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class, STEAD_UI ("fund/stead-fund-page.ui"));
  bind_children (widget_class);
}

static void
stead_fund_page_init (SteadFundPage *self)
{
  const char *words[] = { NULL, _("Plan"), _("Bill"), _("Money"), _("Work"), _("Afterwards"), _("Why?") };

  self->ids = g_array_new (FALSE, FALSE, sizeof (gint64));
  self->quiet = TRUE;
  gtk_widget_init_template (GTK_WIDGET (self));
  stead_ui_hush_stack (self->stack);
  stead_ui_hush_stack (self->views);
  stead_why_box_set_page (self->why);
  self->quiet = FALSE;
  stead_ui_name (GTK_WIDGET (self->choice), _("Build"));
  /* What is pressed is the button inside. */
  stead_ui_name (gtk_widget_get_first_child (GTK_WIDGET (self->choice)), _("Build"));
  for (int i = PLAN; i <= WHY; i++)
    stead_chips_append (self->chips, i, words[i]);
  stead_chips_choose (self->chips, PLAN);
}
