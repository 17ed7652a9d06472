/* stead-ask-dialog.c - what is made or sold, and the questions that matter; then its checklist.
 *
 * The plan is made anew at each answer: a question that no longer matters goes, and
 * one that begins to comes.  What cannot be sold as planned stands before all else.
 */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/check/stead-ask-dialog-private.h"

#include "answer/stead-check-list.h"
#include "app/keep/stead-pick.h"
#include "app/stead-field.h"
#include "app/stead-ui.h"
#include "store/stead-kitchen-repo.h"
#include "store/stead-sale-repo.h"

G_DEFINE_FINAL_TYPE (SteadAskDialog, stead_ask_dialog, STEAD_TYPE_DIALOG)

/* --- saving --------------------------------------------------------------------------------- */

static gboolean
save_act (SteadStore *store,
          gpointer    data,
          GError    **error)
{
  SteadCheckList *list = data;

  return list->id != 0 ? stead_check_repo_renew (store, list, error) : stead_check_repo_save (store, list, error);
}

/* A list of a sale day is called as the day is; others by their foods. */
static const char *
name_of (SteadAskDialog *self)
{
  gint64 what = stead_pick_get (self->what);

  if (self->renewed != NULL)
    return self->renewed->name;
  for (guint i = 0; stead_ask_is_sale (what) && i < self->sales->len; i++)
    if (((const SteadSale *) self->sales->pdata[i])->id == stead_ask_sale_of (what))
      return ((const SteadSale *) self->sales->pdata[i])->name;
  return NULL;
}

static gboolean
stead_ask_dialog_save (SteadDialog *dialog,
                       GError     **error)
{
  SteadAskDialog *self = STEAD_ASK_DIALOG (dialog);
  SteadDesk *desk = stead_dialog_get_desk (dialog);
  SteadStore *store = stead_desk_get_store (desk);
  SteadDay day = stead_ask_dialog_day (self);
  g_autoptr(GPtrArray) limits = NULL;
  g_autoptr(GArray) rows = NULL;
  g_autoptr(SteadCheckList) list = NULL;
  g_autofree char *step = NULL;
  SteadCheckOrder order;

  if (day == STEAD_DAY_NONE)
    return FALSE;
  if (stead_pick_get (self->what) == STEAD_ASK_MENU && stead_field_is_empty (self->menu))
    {
      stead_field_set_error (self->menu, _("Type what is made or sold, with commas between."));
      return FALSE;
    }
  stead_ask_dialog_plan (self);
  limits = self->plan != NULL ? stead_local_limit_repo_list (store, day, error) : NULL;
  if (limits == NULL)
    return FALSE;
  rows = stead_check_local_rows (limits);
  order = stead_ask_dialog_order (self, day, rows);
  list = stead_check_list_from_plan (store, self->plan, &order, name_of (self), error);
  if (list == NULL)
    return FALSE;
  list->id = self->renewed != NULL ? self->renewed->id : 0;
  /* Translators: a step that can be undone; the name of a checklist follows. */
  step = list->id != 0 ? g_strdup_printf (_("making the checklist “%s” anew"), list->name)
                       : g_strdup_printf (_("the checklist “%s”"), list->name);
  if (!stead_desk_act (desk, step, save_act, list, error))
    return FALSE;
  stead_desk_jump (desk, STEAD_TARGET_CHECKLIST, list->id);
  return TRUE;
}

/* --- the object ----------------------------------------------------------------------------- */

static void
what_cb (SteadAskDialog *self)
{
  gint64 what = stead_pick_get (self->what);
  SteadDay today = stead_store_get_today (stead_desk_get_store (stead_dialog_get_desk (STEAD_DIALOG (self))));

  gtk_widget_set_visible (GTK_WIDGET (self->menu), what == STEAD_ASK_MENU);
  for (guint i = 0; i < self->kitchens->len; i++)
    {
      const SteadKitchen *kitchen = self->kitchens->pdata[i];

      if (kitchen->batch.id == what)
        stead_field_show_day (self->day, kitchen->batch.started_on);
    }
  for (guint i = 0; stead_ask_is_sale (what) && i < self->sales->len; i++)
    {
      const SteadSale *sale = self->sales->pdata[i];

      if (sale->id == stead_ask_sale_of (what))
        stead_field_show_day (self->day, sale->day);
    }
  if (what == STEAD_ASK_MENU && self->renewed == NULL)
    stead_field_show_day (self->day, today);
  stead_ask_dialog_plan (self);
}

static void
menu_cb (SteadAskDialog *self)
{
  if (!self->quiet)
    stead_ask_dialog_plan (self);
}

static void
stead_ask_dialog_dispose (GObject *object)
{
  SteadAskDialog *self = STEAD_ASK_DIALOG (object);

  self->quiet = TRUE;
  gtk_widget_dispose_template (GTK_WIDGET (self), STEAD_TYPE_ASK_DIALOG);
  g_clear_pointer (&self->answers, g_array_unref);
  g_clear_pointer (&self->plan, stead_check_plan_answer_free);
  g_clear_pointer (&self->renewed, stead_check_list_free);
  g_clear_pointer (&self->kitchens, g_ptr_array_unref);
  g_clear_pointer (&self->sales, g_ptr_array_unref);
  G_OBJECT_CLASS (stead_ask_dialog_parent_class)->dispose (object);
}

static void
stead_ask_dialog_class_init (SteadAskDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (STEAD_TYPE_FIELD);
  g_type_ensure (STEAD_TYPE_PICK);
  G_OBJECT_CLASS (klass)->dispose = stead_ask_dialog_dispose;
  STEAD_DIALOG_CLASS (klass)->save = stead_ask_dialog_save;
  gtk_widget_class_set_template_from_resource (widget_class, STEAD_UI ("check/stead-ask-dialog.ui"));
  gtk_widget_class_bind_template_child (widget_class, SteadAskDialog, caution);
  gtk_widget_class_bind_template_child (widget_class, SteadAskDialog, day);
  gtk_widget_class_bind_template_child (widget_class, SteadAskDialog, menu);
  gtk_widget_class_bind_template_child (widget_class, SteadAskDialog, questions);
  gtk_widget_class_bind_template_child (widget_class, SteadAskDialog, sentence);
  gtk_widget_class_bind_template_child (widget_class, SteadAskDialog, stops);
  gtk_widget_class_bind_template_child (widget_class, SteadAskDialog, unknown);
  gtk_widget_class_bind_template_child (widget_class, SteadAskDialog, what);
  gtk_widget_class_bind_template_callback (widget_class, menu_cb);
  gtk_widget_class_bind_template_callback (widget_class, what_cb);
}

static void
stead_ask_dialog_init (SteadAskDialog *self)
{
  self->answers = g_array_new (FALSE, FALSE, sizeof (SteadCheckAnswered));
  self->kitchens = g_ptr_array_new ();
  self->sales = g_ptr_array_new ();
  gtk_widget_init_template (GTK_WIDGET (self));
}

/* Sale days that are still to come or under way, and the one that was asked for. */
static gboolean
fill_sales (SteadAskDialog *self,
            SteadStore     *store,
            gint64          chosen,
            GError        **error)
{
  GPtrArray *sales = stead_sale_repo_list (store, error);

  if (sales == NULL)
    return FALSE;
  g_ptr_array_unref (self->sales);
  self->sales = sales;
  for (guint i = sales->len; i-- > 0;)
    {
      const SteadSale *sale = sales->pdata[i];
      g_autofree char *day = stead_day_format (sale->day, STEAD_DAY_STYLE_SHORT);
      /* Translators: the name of a sale day, its day. */
      g_autofree char *text = g_strdup_printf (C_("sale day", "%s, %s"), sale->name, day);

      if (stead_ask_of_sale (sale->id) == chosen
          || (sale->closed_at == STEAD_SALE_NO_TIME && sale->day >= stead_store_get_today (store)))
        stead_pick_append (self->what, stead_ask_of_sale (sale->id), text);
    }
  return TRUE;
}

static gboolean
fill_what (SteadAskDialog *self,
           SteadStore     *store,
           gint64          chosen,
           GError        **error)
{
  GPtrArray *kitchens = stead_kitchen_repo_list (store, chosen > 0, error);

  if (kitchens == NULL)
    return FALSE;
  g_ptr_array_unref (self->kitchens);
  self->kitchens = kitchens;
  for (guint i = 0; i < kitchens->len; i++)
    {
      const SteadKitchen *kitchen = kitchens->pdata[i];

      stead_pick_append (self->what, kitchen->batch.id, kitchen->batch.name);
    }
  if (!fill_sales (self, store, chosen, error))
    return FALSE;
  stead_pick_append (self->what, STEAD_ASK_MENU, _("A menu that I type in"));
  stead_pick_show (self->what, chosen);
  return TRUE;
}

static void
present (SteadAskDialog *self,
         GtkWidget      *parent,
         SteadDesk      *desk,
         gint64          what)
{
  g_autoptr(GError) error = NULL;

  if (!fill_what (self, stead_desk_get_store (desk), what, &error))
    {
      stead_desk_say (desk, error->message, FALSE);
      gtk_window_destroy (GTK_WINDOW (self));
      return;
    }
  stead_dialog_present (STEAD_DIALOG (self), parent, desk);
  stead_field_set_today (self->day, stead_store_get_today (stead_desk_get_store (desk)));
  what_cb (self);
}

void
stead_ask_dialog_show (GtkWidget *parent,
                       SteadDesk *desk,
                       gint64     batch_id)
{
  SteadAskDialog *self = g_object_new (STEAD_TYPE_ASK_DIALOG, "title", _("New checklist"), NULL);

  present (self, parent, desk, batch_id);
}

void
stead_ask_dialog_show_sale (GtkWidget *parent,
                            SteadDesk *desk,
                            gint64     sale_id)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(GPtrArray) lists = stead_check_repo_of_sale (stead_desk_get_store (desk), sale_id, &error);

  if (lists == NULL)
    stead_desk_say (desk, error->message, FALSE);
  else if (lists->len > 0)
    stead_desk_jump (desk, STEAD_TARGET_CHECKLIST, ((const SteadCheckList *) lists->pdata[0])->id);
  else
    present (g_object_new (STEAD_TYPE_ASK_DIALOG, "title", _("New checklist"), NULL), parent, desk, stead_ask_of_sale (sale_id));
}

static char *
menu_of (const SteadCheckList *list)
{
  g_autoptr(GPtrArray) names = g_ptr_array_new ();

  for (guint i = 0; i < list->foods->len; i++)
    g_ptr_array_add (names, (gpointer) ((const SteadListFood *) list->foods->pdata[i])->name);
  g_ptr_array_add (names, NULL);
  return g_strjoinv (", ", (char **) names->pdata);
}

void
stead_ask_dialog_show_renew (GtkWidget *parent,
                             SteadDesk *desk,
                             gint64     list_id)
{
  g_autoptr(GError) error = NULL;
  SteadCheckList *list = stead_check_repo_get (stead_desk_get_store (desk), list_id, &error);
  g_autoptr(GArray) answers = NULL;
  g_autofree char *menu = NULL;
  SteadAskDialog *self;

  if (list == NULL)
    {
      stead_desk_say (desk, error->message, FALSE);
      return;
    }
  self = g_object_new (STEAD_TYPE_ASK_DIALOG, "title", _("Make the checklist anew"), "save-label", _("Make it anew"), NULL);
  self->renewed = list;
  answers = stead_check_list_answers (list);
  for (guint i = 0; i < answers->len; i++)
    stead_ask_dialog_keep (self, &g_array_index (answers, SteadCheckAnswered, i));
  menu = menu_of (list);
  self->quiet = TRUE;
  if (list->batch_id == 0 && list->sale_id == 0)
    stead_field_set_text (self->menu, menu);
  stead_field_show_day (self->day, list->day);
  self->quiet = FALSE;
  present (self, parent, desk, list->batch_id != 0 ? list->batch_id : list->sale_id != 0 ? stead_ask_of_sale (list->sale_id) : STEAD_ASK_MENU);
  stead_field_show_day (self->day, list->day);
  gtk_widget_set_sensitive (GTK_WIDGET (self->what), FALSE);
}
