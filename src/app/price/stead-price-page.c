/* stead-price-page.c - the place Price: what one unit costs, and how many to sell
 * at which price.
 *
 * The page reads one price answer into the model; everything on it follows the
 * model.  The product and the period are the desk's, so that the strip's figure
 * and the papers speak of the same.
 */
#include "config.h"

#include "app/price/stead-price-page.h"

#include <glib/gi18n-lib.h>

#include "answer/stead-answer-error.h"
#include "app/price/stead-best-use-view.h"
#include "app/price/stead-choice-view.h"
#include "app/price/stead-cost-card.h"
#include "app/price/stead-cvp-view.h"
#include "app/price/stead-figure-row.h"
#include "app/price/stead-how-sure-view.h"
#include "app/price/stead-joint-view.h"
#include "app/price/stead-price-form.h"
#include "app/price/stead-price-history.h"
#include "app/price/stead-price-model.h"
#include "app/price/stead-price-table.h"
#include "app/price/stead-product-chips.h"
#include "app/price/stead-product-dialog.h"
#include "app/price/stead-together-view.h"
#include "app/price/stead-steps-view.h"
#include "app/price/stead-what-if-view.h"
#include "app/stead-chips.h"
#include "app/stead-paper-dialog.h"
#include "app/stead-ui.h"
#include "store/stead-product-repo.h"

struct _SteadPricePage
{
  SteadPage        parent_instance;

  SteadPriceModel *model;
  GPtrArray       *products;      /* of SteadProduct: in the order of the chips */
  gboolean         choosing;      /* while the page itself tells the desk */

  SteadChips      *views;
  SteadChips      *chips;
  GtkDropDown     *period;
  GtkWidget       *edit;
  GtkStack        *body;
  GtkLabel        *sentence;
  GtkLabel        *strut;
  GtkBox          *left;
  GtkBox          *right;
  GtkStack        *view;
  GtkWidget       *as_table;
  GtkWidget       *menu_button;
  GtkWidget       *cost_card;
  SteadCvpView    *cvp;
  GtkWidget       *history;

  GtkWidget       *first;
  GtkLabel        *first_title;
  GtkLabel        *first_text;
  GtkButton       *first_button;
  SteadTarget      first_target;  /* where its button leads; NONE: the product dialog */
  gint64           first_id;
};

/* What to look at; chip ids count from 1.  ONE is the product alone. */
enum { ONE = 1, STEPS, CHOICE, WHAT_IF, TOGETHER, BEST_USE, JOINT, HOW_SURE };

/* The other views, each made when it is first looked at. */
static const struct
{
  int         id;
  const char *name;           /* N_() */
  gboolean    by_product;     /* it speaks of the chosen product */
  GtkWidget *(*make) (void);
} views[] = {
  { STEPS, N_("Step by step"), TRUE, stead_steps_view_new },
  { CHOICE, N_("Which price"), TRUE, stead_choice_view_new },
  { WHAT_IF, N_("What if"), TRUE, stead_what_if_view_new },
  { TOGETHER, N_("All products together"), FALSE, stead_together_view_new },
  { HOW_SURE, N_("How sure"), FALSE, stead_how_sure_view_new },
  { BEST_USE, N_("Best use"), FALSE, stead_best_use_view_new },
  { JOINT, N_("Shared cost"), FALSE, stead_joint_view_new },
};

G_DEFINE_FINAL_TYPE (SteadPricePage, stead_price_page, STEAD_TYPE_PAGE)

static SteadDesk *
get_desk (SteadPricePage *self)
{
  return stead_page_get_desk (STEAD_PAGE (self));
}

static SteadProduct *
find_product (SteadPricePage *self,
              gint64          id)
{
  for (guint i = 0; i < self->products->len; i++)
    if (((SteadProduct *) self->products->pdata[i])->id == id)
      return self->products->pdata[i];
  return NULL;
}

static void
choose (SteadPricePage *self,
        gint64          id)
{
  self->choosing = TRUE;
  stead_desk_set_product (get_desk (self), id);
  self->choosing = FALSE;
}

/* What is shown -------------------------------------------------------------------- */

/* What was retired is not offered, but can be shown when something leads to it. */
static GPtrArray *
read_products (SteadPricePage  *self,
               GError         **error)
{
  g_autoptr(GPtrArray) all = stead_product_repo_list (stead_page_get_store (STEAD_PAGE (self)), TRUE, error);
  gint64 chosen = stead_desk_get_product (get_desk (self));

  for (guint i = all != NULL ? all->len : 0; i > 0; i--)
    {
      const SteadProduct *product = all->pdata[i - 1];

      if (product->retired_on != STEAD_DAY_NONE && product->id != chosen)
        g_ptr_array_remove_index (all, i - 1);
    }
  return g_steal_pointer (&all);
}

static void
show_first (SteadPricePage *self,
            const char     *title,
            const char     *text,
            const char     *button,
            SteadTarget     target,
            gint64          id)
{
  gtk_label_set_text (self->first_title, title);
  gtk_label_set_text (self->first_text, text);
  gtk_button_set_label (self->first_button, button != NULL ? button : "");
  gtk_widget_set_visible (GTK_WIDGET (self->first_button), button != NULL);
  self->first_target = target;
  self->first_id = id;
  gtk_stack_set_visible_child_name (self->body, "first");
}

/* The step that leads to what is missing. */
static void
show_missing (SteadPricePage     *self,
              const SteadProduct *product,
              const GError       *error)
{
  gboolean missing = g_error_matches (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_MISSING);

  if (!missing)
    show_first (self, _("The cost cannot be worked out"), error->message, NULL, STEAD_TARGET_NONE, 0);
  else if (product->batch_id == 0 && product->item_id == 0)
    show_first (self, _("One thing is missing"), error->message, _("Edit product…"), STEAD_TARGET_NONE, product->id);
  else if (product->batch_id == 0)
    show_first (self, _("One thing is missing"), error->message, _("Go to Keep"), STEAD_TARGET_ITEM, product->item_id);
  else
    show_first (self, _("One thing is missing"), error->message, _("Go to Raise"), STEAD_TARGET_BATCH,
                product->batch_id);
}

static void
show_answer (SteadPricePage *self)
{
  const SteadPriceAnswer *answer = stead_price_model_get_answer (self->model);


  stead_cost_card_set (STEAD_COST_CARD (self->cost_card), answer != NULL ? answer->cost : NULL);
  if (answer != NULL)
    stead_price_history_set (STEAD_PRICE_HISTORY (self->history), answer,
                             stead_store_get_today (stead_page_get_store (STEAD_PAGE (self))));
}

static void
show_sentence (SteadPricePage *self)
{
  const SteadPriceAnswer *answer = stead_price_model_get_answer (self->model);

  if (answer != NULL && g_strcmp0 (gtk_label_get_label (self->sentence), answer->sentence) != 0)
    gtk_label_set_markup (self->sentence, answer->sentence);
}

/* Only a flock is asked about by periods; what is harvested at its end counts whole. */
static void
show_period (SteadPricePage     *self,
             const SteadProduct *product)
{
  const SteadPriceAnswer *answer = stead_price_model_get_answer (self->model);
  gboolean whole = answer != NULL && answer->cost->money != NULL;

  gtk_widget_set_visible (GTK_WIDGET (self->period), product != NULL && !whole);
}

static void
load (SteadPricePage *self)
{
  SteadDesk *desk = get_desk (self);
  const SteadProduct *product = find_product (self, stead_desk_get_product (desk));
  g_autoptr(GError) error = NULL;

  gtk_widget_set_visible (self->edit, product != NULL);
  if (product == NULL)
    {
      stead_price_model_take_answer (self->model, NULL);
      show_first (self, _("What do you sell?"),
                  _("Here stands what one dozen or one jar really costs, part by part, and how many must be "
                    "sold at which price. Begin with one product: its name, its pack and the batch that it comes from."),
                  _("New product"), STEAD_TARGET_NONE, 0);
    }
  else if (stead_price_model_load (self->model, stead_desk_get_store (desk), product->id,
                                   stead_desk_get_period (desk), &error))
    gtk_stack_set_visible_child_name (self->body, "work");
  else
    show_missing (self, product, error);
  show_period (self, product);
}

/* The view that is looked at; %NULL: the product alone. */
static SteadView *
current_view (SteadPricePage *self)
{
  gint64 id = stead_chips_get (self->views);

  for (gsize i = 0; i < G_N_ELEMENTS (views); i++)
    if (views[i].id == id)
      {
        GtkWidget *view = gtk_stack_get_child_by_name (self->body, views[i].name);

        if (view == NULL)
          {
            view = views[i].make ();
            gtk_stack_add_named (self->body, view, views[i].name);
          }
        return STEAD_VIEW (view);
      }
  return NULL;
}

static gboolean
is_by_product (SteadPricePage *self)
{
  gint64 id = stead_chips_get (self->views);

  for (gsize i = 0; i < G_N_ELEMENTS (views); i++)
    if (views[i].id == id)
      return views[i].by_product;
  return TRUE;
}

static void
show_view (SteadPricePage *self)
{
  SteadView *view = current_view (self);

  gtk_widget_set_visible (GTK_WIDGET (self->chips), is_by_product (self));
  if (view == NULL)
    {
      load (self);
      return;
    }
  gtk_stack_set_visible_child (self->body, GTK_WIDGET (view));
  stead_view_refresh (view, get_desk (self));
}

static void
stead_price_page_refresh (SteadPage *page)
{
  SteadPricePage *self = STEAD_PRICE_PAGE (page);
  g_autoptr(GError) error = NULL;
  g_autoptr(GPtrArray) products = read_products (self, &error);
  gboolean same;

  if (products == NULL)
    {
      stead_price_model_take_answer (self->model, NULL);
      show_first (self, _("The products cannot be read"), error->message, NULL, STEAD_TARGET_NONE, 0);
      return;
    }
  same = stead_product_chips_same (self->products, products);
  g_clear_pointer (&self->products, g_ptr_array_unref);
  self->products = g_steal_pointer (&products);
  if (find_product (self, stead_desk_get_product (get_desk (self))) == NULL)
    choose (self, self->products->len > 0 ? ((SteadProduct *) self->products->pdata[0])->id : 0);
  if (!same)
    stead_product_chips_fill (self->chips, self->products);
  stead_chips_choose (self->chips, stead_desk_get_product (get_desk (self)));
  gtk_drop_down_set_selected (self->period, stead_desk_get_period (get_desk (self)));
  show_view (self);
}

static void
stead_price_page_show (SteadPage   *page,
                       SteadTarget  target,
                       gint64       id)
{
  if (target == STEAD_TARGET_PRODUCT && id != 0)
    stead_chips_choose (STEAD_PRICE_PAGE (page)->views, ONE);
  if (target == STEAD_TARGET_PRODUCT && id != 0)
    stead_desk_set_product (stead_page_get_desk (page), id);
}

/* What the person does ------------------------------------------------------------------ */

static void
selected_cb (SteadPricePage *self)
{
  if (!self->choosing)
    stead_page_invalidate (STEAD_PAGE (self));
}

static void
view_cb (SteadPricePage *self)
{
  stead_page_invalidate (STEAD_PAGE (self));
}

static void
chosen_cb (SteadPricePage *self,
           gint64          id)
{
  stead_desk_set_product (get_desk (self), id);
}

static void
add_cb (SteadPricePage *self)
{
  stead_product_dialog_show (GTK_WIDGET (self), get_desk (self), 0);
}

static void
edit_cb (SteadPricePage *self)
{
  stead_product_dialog_show (GTK_WIDGET (self), get_desk (self), stead_desk_get_product (get_desk (self)));
}

static void
first_cb (SteadPricePage *self)
{
  if (self->first_target == STEAD_TARGET_NONE)
    stead_product_dialog_show (GTK_WIDGET (self), get_desk (self), self->first_id);
  else
    stead_desk_jump (get_desk (self), self->first_target, self->first_id);
}

static void
period_cb (SteadPricePage *self)
{
  guint chosen = gtk_drop_down_get_selected (self->period);

  if (chosen < STEAD_N_PERIODS)
    stead_desk_set_period (get_desk (self), (SteadPeriod) chosen);
}

static void
as_table_cb (SteadPricePage *self)
{
  gboolean table = gtk_toggle_button_get_active (GTK_TOGGLE_BUTTON (self->as_table));

  gtk_stack_set_visible_child_name (self->view, table ? "table" : "chart");
}

static void
show_paper (SteadPricePage *self,
            const char     *name)
{
  const SteadPriceAnswer *answer = stead_price_model_get_answer (self->model);

  if (answer != NULL)
    stead_paper_dialog_show_tried (GTK_WIDGET (self), get_desk (self), name, answer->cost->product->name,
                                   &answer->cvp);
}

static void
price_page_cb (SteadPricePage *self)
{
  show_paper (self, "price-page");
}

static void
cost_sheet_cb (SteadPricePage *self)
{
  show_paper (self, "cost-sheet");
}

static void
copy_action (GtkWidget  *widget,
             const char *name,
             GVariant   *parameter)
{
  SteadPricePage *self = STEAD_PRICE_PAGE (widget);

  gtk_widget_activate_action (GTK_WIDGET (stead_cvp_view_get_chart (self->cvp)), "chart.copy", NULL);
}

static void
save_action (GtkWidget  *widget,
             const char *name,
             GVariant   *parameter)
{
  SteadPricePage *self = STEAD_PRICE_PAGE (widget);

  gtk_widget_activate_action_variant (GTK_WIDGET (stead_cvp_view_get_chart (self->cvp)), "chart.save", parameter);
}

/* Page ------------------------------------------------------------------------------------- */

static void
fill_top (SteadPricePage *self)
{
  const char *names[STEAD_N_PERIODS + 1] = { NULL };
  g_autoptr(GtkStringList) list = NULL;

  for (int period = 0; period < STEAD_N_PERIODS; period++)
    names[period] = stead_period_name ((SteadPeriod) period);
  list = gtk_string_list_new (names);
  g_signal_handlers_block_by_func (self->period, period_cb, self);
  gtk_drop_down_set_model (self->period, G_LIST_MODEL (list));
  gtk_drop_down_set_selected (self->period, stead_desk_get_period (get_desk (self)));
  g_signal_handlers_unblock_by_func (self->period, period_cb, self);
  stead_ui_name (gtk_widget_get_first_child (GTK_WIDGET (self->period)), _("Costs of which days"));
}

static void
fill_left (SteadPricePage *self)
{
  GtkWidget *sheet = gtk_button_new_with_label (_("Cost sheet…"));
  GtkWidget *form = stead_price_form_new (get_desk (self), self->model);

  self->cost_card = stead_cost_card_new (get_desk (self));
  g_signal_connect_swapped (sheet, "clicked", G_CALLBACK (cost_sheet_cb), self);
  gtk_widget_set_valign (sheet, GTK_ALIGN_CENTER);
  stead_cost_card_add_button (STEAD_COST_CARD (self->cost_card), sheet);
  gtk_widget_add_css_class (self->cost_card, "card");
  gtk_widget_add_css_class (form, "card");
  gtk_box_append (self->left, self->cost_card);
  gtk_box_append (self->left, form);
}

static void
fill_right (SteadPricePage *self)
{
  GtkWidget *changes = gtk_expander_new (_("How the price changed"));

  self->cvp = STEAD_CVP_VIEW (stead_cvp_view_new (self->model));
  gtk_stack_add_named (self->view, GTK_WIDGET (self->cvp), "chart");
  gtk_stack_add_named (self->view, stead_price_table_new (self->model), "table");
  gtk_box_append (self->right, stead_figure_row_new (self->model));
  self->history = stead_price_history_new ();
  stead_ui_name (changes, _("How the price changed"));
  stead_ui_expander_set_child (changes, self->history);
  gtk_box_append (self->right, changes);
}

static void
stead_price_page_constructed (GObject *object)
{
  SteadPricePage *self = STEAD_PRICE_PAGE (object);

  G_OBJECT_CLASS (stead_price_page_parent_class)->constructed (object);
  stead_chips_append (self->views, ONE, _("One product"));
  for (gsize i = 0; i < G_N_ELEMENTS (views); i++)
    stead_chips_append (self->views, views[i].id, _(views[i].name));
  stead_chips_choose (self->views, ONE);
  gtk_label_set_text (self->strut, "\n");    /* two lines: the chart must not move when the sentence grows */
  fill_top (self);
  fill_left (self);
  fill_right (self);
  g_signal_connect_object (get_desk (self), "selected", G_CALLBACK (selected_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_swapped (self->model, "loaded", G_CALLBACK (show_answer), self);
  g_signal_connect_swapped (self->model, "changed", G_CALLBACK (show_sentence), self);
}

static void
stead_price_page_dispose (GObject *object)
{
  SteadPricePage *self = STEAD_PRICE_PAGE (object);

  if (self->model != NULL)
    {
      g_signal_handlers_disconnect_by_data (self->model, self);
      stead_cost_card_set (STEAD_COST_CARD (self->cost_card), NULL);
    }
  gtk_widget_dispose_template (GTK_WIDGET (self), STEAD_TYPE_PRICE_PAGE);
  g_clear_object (&self->model);
  g_clear_pointer (&self->products, g_ptr_array_unref);
  G_OBJECT_CLASS (stead_price_page_parent_class)->dispose (object);
}

static void
bind_children (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_child (widget_class, SteadPricePage, views);
  gtk_widget_class_bind_template_child (widget_class, SteadPricePage, chips);
  gtk_widget_class_bind_template_child (widget_class, SteadPricePage, period);
  gtk_widget_class_bind_template_child (widget_class, SteadPricePage, edit);
  gtk_widget_class_bind_template_child (widget_class, SteadPricePage, body);
  gtk_widget_class_bind_template_child (widget_class, SteadPricePage, sentence);
  gtk_widget_class_bind_template_child (widget_class, SteadPricePage, strut);
  gtk_widget_class_bind_template_child (widget_class, SteadPricePage, left);
  gtk_widget_class_bind_template_child (widget_class, SteadPricePage, right);
  gtk_widget_class_bind_template_child (widget_class, SteadPricePage, view);
  gtk_widget_class_bind_template_child (widget_class, SteadPricePage, as_table);
  gtk_widget_class_bind_template_child (widget_class, SteadPricePage, menu_button);
  gtk_widget_class_bind_template_child (widget_class, SteadPricePage, first);
  gtk_widget_class_bind_template_child (widget_class, SteadPricePage, first_title);
  gtk_widget_class_bind_template_child (widget_class, SteadPricePage, first_text);
  gtk_widget_class_bind_template_child (widget_class, SteadPricePage, first_button);
  gtk_widget_class_bind_template_callback (widget_class, view_cb);
  gtk_widget_class_bind_template_callback (widget_class, chosen_cb);
  gtk_widget_class_bind_template_callback (widget_class, add_cb);
  gtk_widget_class_bind_template_callback (widget_class, period_cb);
  gtk_widget_class_bind_template_callback (widget_class, edit_cb);
  gtk_widget_class_bind_template_callback (widget_class, first_cb);
  gtk_widget_class_bind_template_callback (widget_class, as_table_cb);
  gtk_widget_class_bind_template_callback (widget_class, price_page_cb);
}

static void
stead_price_page_class_init (SteadPricePageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (STEAD_TYPE_CHIPS);
  G_OBJECT_CLASS (klass)->constructed = stead_price_page_constructed;
  G_OBJECT_CLASS (klass)->dispose = stead_price_page_dispose;
  STEAD_PAGE_CLASS (klass)->refresh = stead_price_page_refresh;
  STEAD_PAGE_CLASS (klass)->show = stead_price_page_show;
  gtk_widget_class_set_template_from_resource (widget_class, STEAD_UI ("price/stead-price-page.ui"));
  bind_children (widget_class);
  gtk_widget_class_install_action (widget_class, "price.copy", NULL, copy_action);
  gtk_widget_class_install_action (widget_class, "price.save", "s", save_action);
}

static void
stead_price_page_init (SteadPricePage *self)
{
  self->model = stead_price_model_new ();
  self->products = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_product_free);
  gtk_widget_init_template (GTK_WIDGET (self));
  stead_ui_name_menu (GTK_MENU_BUTTON (self->menu_button));
  stead_ui_hush_stack (self->body);
  stead_ui_hush_stack (self->view);
}

GtkWidget *
stead_price_page_new (SteadDesk *desk)
{
  g_return_val_if_fail (STEAD_IS_DESK (desk), NULL);

  return g_object_new (STEAD_TYPE_PRICE_PAGE, "desk", desk, NULL);
}
