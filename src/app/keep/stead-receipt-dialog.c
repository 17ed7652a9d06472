/* stead-receipt-dialog.c - a receipt: new, changed, signed, or corrected.
 *
 * A signed receipt is shown as it was signed; saving it then enters a new
 * receipt beside it that names the one it corrects.
 */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/keep/stead-cash-picks.h"
#include "app/keep/stead-item-dialog.h"
#include "app/keep/stead-picture-box.h"
#include "app/keep/stead-receipt-dialog.h"
#include "app/keep/stead-receipt-line-row.h"
#include "app/stead-field.h"
#include "app/stead-ui.h"
#include "core/stead-money.h"
#include "store/stead-cash-repo.h"
#include "store/stead-farm-repo.h"
#include "store/stead-store-error.h"
#include "store/stead-store-watch.h"

struct _SteadReceiptDialog
{
  SteadDialog     parent_instance;

  SteadReceipt   *receipt;
  GPtrArray      *rows;       /* of SteadReceiptLineRow, not owned */
  GPtrArray      *items;      /* of SteadItem: what a line can name */
  GPtrArray      *people;     /* of SteadPerson */
  GPtrArray      *advisors;   /* of SteadPerson, not owned: those of people who may sign */
  gulong          changed_id;
  gint64          twin_id;    /* a receipt like it that the person was told of; 0: none */

  GtkLabel       *state, *total;
  SteadField     *day, *supplier, *reference, *note;
  GtkCheckButton *gift;
  GtkBox         *lines;
  GtkDropDown    *person, *advisor;
  GtkWidget      *line_buttons, *sign_box;
  SteadPictureBox *pictures;
};

G_DEFINE_FINAL_TYPE (SteadReceiptDialog, stead_receipt_dialog, STEAD_TYPE_DIALOG)

/* --- lines ---------------------------------------------------------------------- */

static void
update_total (SteadReceiptDialog *self)
{
  SteadDesk *desk = stead_dialog_get_desk (STEAD_DIALOG (self));
  gint64 cents = 0;
  g_autofree char *sum = NULL, *text = NULL;

  if (desk == NULL)
    return;
  for (guint i = 0; i < self->rows->len; i++)
    cents += stead_receipt_line_row_peek_cost (self->rows->pdata[i]);
  sum = stead_money_format (cents, stead_desk_get_farm (desk)->currency);
  /* Translators: a sum of money follows */
  text = g_strdup_printf (_("Total %s"), sum);
  gtk_label_set_text (self->total, text);
}

static void
remove_line (SteadReceiptDialog *self,
             GtkWidget          *row)
{
  g_ptr_array_remove (self->rows, row);
  gtk_box_remove (self->lines, row);
  update_total (self);
}

static SteadReceiptLineRow *
add_line (SteadReceiptDialog *self,
          SteadDesk          *desk)
{
  GtkWidget *row = stead_receipt_line_row_new (desk);

  stead_receipt_line_row_set_items (STEAD_RECEIPT_LINE_ROW (row), self->items);
  g_signal_connect_object (row, "changed", G_CALLBACK (update_total), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (row, "removed", G_CALLBACK (remove_line), self, G_CONNECT_SWAPPED);
  gtk_box_append (self->lines, row);
  g_ptr_array_add (self->rows, row);
  return STEAD_RECEIPT_LINE_ROW (row);
}

static void
add_line_cb (SteadReceiptDialog *self)
{
  if (self->items->len == 0)
    {
      stead_dialog_show_error (STEAD_DIALOG (self), _("Make the item first: press “New item…”."));
      return;
    }
  gtk_widget_child_focus (GTK_WIDGET (add_line (self, stead_dialog_get_desk (STEAD_DIALOG (self)))),
                          GTK_DIR_TAB_FORWARD);
}

static void
new_item_cb (SteadReceiptDialog *self)
{
  stead_item_dialog_show (GTK_WIDGET (self), stead_dialog_get_desk (STEAD_DIALOG (self)), 0);
}

/* A new item was made: every line can name it. */
static void
items_changed_cb (SteadReceiptDialog *self)
{
  SteadDesk *desk = stead_dialog_get_desk (STEAD_DIALOG (self));
  g_autoptr(GPtrArray) items = stead_item_repo_list (stead_desk_get_store (desk), NULL);

  if (items == NULL)
    return;
  g_ptr_array_unref (self->items);
  self->items = g_steal_pointer (&items);
  for (guint i = 0; i < self->rows->len; i++)
    stead_receipt_line_row_set_items (self->rows->pdata[i], self->items);
  if (self->rows->len == 0 && self->items->len > 0)
    add_line (self, desk);
}

/* --- saving, signing -------------------------------------------------------------- */

static gboolean
read_lines (SteadReceiptDialog *self)
{
  gboolean good = TRUE;

  g_array_set_size (self->receipt->lines, 0);
  for (guint i = 0; i < self->rows->len; i++)
    {
      SteadReceiptLine line;

      if (stead_receipt_line_row_read (self->rows->pdata[i], &line))
        g_array_append_val (self->receipt->lines, line);
      else
        good = FALSE;
    }
  if (self->rows->len > 0)
    return good;
  stead_dialog_show_error (STEAD_DIALOG (self), _("Add at least one line: what came, how much, what it cost."));
  return FALSE;
}

/* The correction of a signed receipt is a receipt of its own. */
static void
become_correction (SteadReceipt *receipt)
{
  receipt->corrects_id = receipt->id;
  receipt->id = 0;
  receipt->signed_by = 0;
  receipt->signed_on = STEAD_DAY_NONE;
  for (guint i = 0; i < receipt->lines->len; i++)
    {
      g_array_index (receipt->lines, SteadReceiptLine, i).id = 0;
      g_array_index (receipt->lines, SteadReceiptLine, i).lot_id = 0;
    }
}

static gboolean
holds (const GArray *ids,
       gint64        id)
{
  for (guint i = 0; i < ids->len; i++)
    if (g_array_index (ids, gint64, i) == id)
      return TRUE;
  return FALSE;
}

/* The receipt shows the pictures that the box shows, and no others. */
static gboolean
save_pictures (SteadReceiptDialog  *self,
               SteadStore          *store,
               GError             **error)
{
  gint64 receipt_id = self->receipt->id;
  g_autoptr(GArray) before = stead_receipt_picture_repo_list (store, receipt_id, error);
  g_autoptr(GArray) after = before != NULL ? stead_picture_box_save (self->pictures, store, error) : NULL;

  if (after == NULL)
    return FALSE;
  for (guint i = 0; i < after->len; i++)
    if (!holds (before, g_array_index (after, gint64, i))
        && !stead_receipt_picture_repo_add (store, receipt_id, g_array_index (after, gint64, i), error))
      return FALSE;
  for (guint i = 0; i < before->len; i++)
    if (!holds (after, g_array_index (before, gint64, i))
        && !stead_receipt_picture_repo_remove (store, receipt_id, g_array_index (before, gint64, i), error))
      return FALSE;
  return TRUE;
}

/* A paper that is entered twice is told once; saved again it is another one. */
static gboolean
check_twin (SteadReceiptDialog *self,
            SteadStore         *store,
            GError            **error)
{
  g_autoptr(GArray) twins = stead_receipt_repo_twins (store, self->receipt->id, error);
  g_autoptr(SteadReceipt) twin = NULL;
  g_autofree char *day = NULL;

  if (twins == NULL)
    return FALSE;
  if (twins->len == 0 || g_array_index (twins, gint64, 0) == self->twin_id)
    return TRUE;
  twin = stead_receipt_repo_get (store, g_array_index (twins, gint64, 0), error);
  if (twin == NULL)
    return FALSE;
  self->twin_id = twin->id;
  day = stead_day_format (twin->day, STEAD_DAY_STYLE_MEDIUM);
  g_set_error (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_INVALID,
               /* Translators: a shop's name and a day. */
               _("A receipt from %s with the same sum or number was entered for %s. If this is another one, save once "
                 "more."), twin->supplier, day);
  return FALSE;
}

static gboolean
save_act (SteadStore *store,
          gpointer    data,
          GError    **error)
{
  SteadReceiptDialog *self = data;
  gboolean is_new = self->receipt->id == 0 && self->receipt->corrects_id == 0;

  stead_store_watch_id (store, &self->receipt->id);
  return stead_receipt_repo_save (store, self->receipt, error) &&
         (!is_new || check_twin (self, store, error)) &&
         save_pictures (self, store, error);
}

static gboolean
stead_receipt_dialog_save (SteadDialog *dialog,
                           GError     **error)
{
  SteadReceiptDialog *self = STEAD_RECEIPT_DIALOG (dialog);
  SteadReceipt *receipt = self->receipt;
  guint person = gtk_drop_down_get_selected (self->person);
  const char *supplier = NULL;
  g_autofree char *step = NULL;
  gboolean good = stead_field_read_day (self->day, STEAD_DAY_NONE, &receipt->day);

  good &= stead_field_read_text (self->supplier, &supplier);
  good &= read_lines (self);
  good &= stead_picture_box_is_ready (self->pictures);
  if (!good)
    return FALSE;
  /* A correction comes into the books on the day that it is written. */
  if (receipt->signed_by == 0
      && !stead_cash_picks_check_day (self->day, stead_desk_get_store (stead_dialog_get_desk (dialog)), receipt->day))
    return FALSE;
  g_free (receipt->supplier);
  receipt->supplier = g_strstrip (g_strdup (supplier));
  receipt->is_gift = gtk_check_button_get_active (self->gift);
  g_free (receipt->reference);
  receipt->reference = g_strdup (stead_field_get_text (self->reference));
  g_free (receipt->note);
  receipt->note = g_strdup (stead_field_get_text (self->note));
  receipt->person_id = person > 0 && person <= self->people->len
                       ? ((SteadPerson *) self->people->pdata[person - 1])->id : 0;
  if (receipt->signed_by != 0)
    become_correction (receipt);
  /* Translators: a shop's or giver's name follows */
  step = g_strdup_printf (receipt->corrects_id != 0 ? _("correction of the receipt from %s")
                                                    : _("receipt from %s"), receipt->supplier);
  return stead_desk_act (stead_dialog_get_desk (dialog), step, save_act, self, error);
}

static gboolean
remove_act (SteadStore *store,
            gpointer    data,
            GError    **error)
{
  return stead_receipt_repo_delete (store, ((SteadReceipt *) data)->id, error);
}

static gboolean
stead_receipt_dialog_remove (SteadDialog *dialog,
                             GError     **error)
{
  SteadReceiptDialog *self = STEAD_RECEIPT_DIALOG (dialog);
  g_autofree char *step = g_strdup_printf (_("deleting the receipt from %s"), self->receipt->supplier);

  return stead_desk_act (stead_dialog_get_desk (dialog), step, remove_act, self->receipt, error);
}

typedef struct
{
  gint64 receipt_id, advisor_id;
} Signing;

static gboolean
sign_act (SteadStore *store,
          gpointer    data,
          GError    **error)
{
  const Signing *signing = data;

  return stead_receipt_repo_sign (store, signing->receipt_id, signing->advisor_id, error);
}

static void
sign_cb (SteadReceiptDialog *self)
{
  guint at = gtk_drop_down_get_selected (self->advisor);
  Signing signing = { .receipt_id = self->receipt->id };
  g_autofree char *step = g_strdup_printf (_("signing the receipt from %s"), self->receipt->supplier);
  g_autoptr(GError) error = NULL;

  if (at >= self->advisors->len)
    return;
  signing.advisor_id = ((SteadPerson *) self->advisors->pdata[at])->id;
  if (stead_desk_act (stead_dialog_get_desk (STEAD_DIALOG (self)), step, sign_act, &signing, &error))
    gtk_window_destroy (GTK_WINDOW (self));
  else
    stead_dialog_show_error (STEAD_DIALOG (self), error->message);
}

/* --- showing ------------------------------------------------------------------------ */

static void
fill_people (SteadReceiptDialog *self,
             SteadStore         *store)
{
  g_autoptr(GtkStringList) names = gtk_string_list_new (NULL);
  g_autoptr(GtkStringList) advisors = gtk_string_list_new (NULL);
  guint chosen = 0;

  self->people = stead_person_repo_list (store, NULL);
  if (self->people == NULL)
    self->people = g_ptr_array_new ();
  gtk_string_list_append (names, _("not said"));
  for (guint i = 0; i < self->people->len; i++)
    {
      SteadPerson *person = self->people->pdata[i];

      gtk_string_list_append (names, person->name);
      if (person->id == self->receipt->person_id)
        chosen = i + 1;
      if (person->role != STEAD_PERSON_ADVISOR || person->left_on != STEAD_DAY_NONE)
        continue;
      gtk_string_list_append (advisors, person->name);
      g_ptr_array_add (self->advisors, person);
    }
  gtk_drop_down_set_model (self->person, G_LIST_MODEL (names));
  gtk_drop_down_set_selected (self->person, chosen);
  gtk_drop_down_set_model (self->advisor, G_LIST_MODEL (advisors));
  gtk_widget_set_visible (self->sign_box, self->receipt->id != 0 && self->receipt->signed_by == 0
                                          && self->advisors->len > 0);
}

static const char *
person_name (SteadReceiptDialog *self,
             gint64              id)
{
  for (guint i = 0; i < self->people->len; i++)
    if (((SteadPerson *) self->people->pdata[i])->id == id)
      return ((SteadPerson *) self->people->pdata[i])->name;
  return "?";
}

static void
show_state (SteadReceiptDialog *self)
{
  const SteadReceipt *receipt = self->receipt;
  g_autofree char *day = NULL, *text = NULL;

  if (receipt->signed_by == 0)
    return;
  day = stead_day_format (receipt->signed_on, STEAD_DAY_STYLE_MEDIUM);
  /* Translators: a person's name and a date */
  text = g_strdup_printf (receipt->corrected_by == 0
                          ? _("Signed by %s on %s. It stays as it is; saving enters a correction beside it.")
                          : _("Signed by %s on %s. A later receipt corrects it, so it does not count. "
                              "Change the later one."),
                          person_name (self, receipt->signed_by), day);
  gtk_label_set_text (self->state, text);
  gtk_widget_show (GTK_WIDGET (self->state));
  g_object_set (self, "save-label", receipt->corrected_by == 0 ? _("Save as correction") : NULL,
                "delete-label", NULL, NULL);
}

static void
show_pictures (SteadReceiptDialog *self,
               SteadStore         *store)
{
  g_autoptr(GArray) ids = self->receipt->id != 0
                          ? stead_receipt_picture_repo_list (store, self->receipt->id, NULL) : NULL;

  for (guint i = 0; ids != NULL && i < ids->len; i++)
    stead_picture_box_add (self->pictures, store, g_array_index (ids, gint64, i));
}

static void
show_receipt (SteadReceiptDialog *self,
              SteadDesk          *desk,
              gint64              item_id)
{
  const SteadReceipt *receipt = self->receipt;

  stead_field_show_day (self->day, receipt->day);
  stead_field_set_text (self->supplier, receipt->supplier != NULL ? receipt->supplier : "");
  stead_field_set_text (self->reference, receipt->reference != NULL ? receipt->reference : "");
  stead_field_set_text (self->note, receipt->note != NULL ? receipt->note : "");
  gtk_check_button_set_active (self->gift, receipt->is_gift);
  for (guint i = 0; i < receipt->lines->len; i++)
    stead_receipt_line_row_show (add_line (self, desk), &g_array_index (receipt->lines, SteadReceiptLine, i));
  if (receipt->lines->len == 0 && self->items->len > 0)
    stead_receipt_line_row_choose (add_line (self, desk), item_id);
  show_pictures (self, stead_desk_get_store (desk));
  show_state (self);
}

static void
stead_receipt_dialog_dispose (GObject *object)
{
  SteadReceiptDialog *self = STEAD_RECEIPT_DIALOG (object);
  SteadDesk *desk = stead_dialog_get_desk (STEAD_DIALOG (self));

  if (desk != NULL)
    g_clear_signal_handler (&self->changed_id, desk);
  gtk_widget_dispose_template (GTK_WIDGET (self), STEAD_TYPE_RECEIPT_DIALOG);
  g_clear_pointer (&self->receipt, stead_receipt_free);
  g_clear_pointer (&self->rows, g_ptr_array_unref);
  g_clear_pointer (&self->items, g_ptr_array_unref);
  g_clear_pointer (&self->advisors, g_ptr_array_unref);
  g_clear_pointer (&self->people, g_ptr_array_unref);
  G_OBJECT_CLASS (stead_receipt_dialog_parent_class)->dispose (object);
}

static void
stead_receipt_dialog_class_init (SteadReceiptDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (STEAD_TYPE_FIELD);
  g_type_ensure (STEAD_TYPE_PICTURE_BOX);
  G_OBJECT_CLASS (klass)->dispose = stead_receipt_dialog_dispose;
  STEAD_DIALOG_CLASS (klass)->save = stead_receipt_dialog_save;
  STEAD_DIALOG_CLASS (klass)->remove = stead_receipt_dialog_remove;
  gtk_widget_class_set_template_from_resource (widget_class, STEAD_UI ("keep/stead-receipt-dialog.ui"));
  gtk_widget_class_bind_template_child (widget_class, SteadReceiptDialog, state);
  gtk_widget_class_bind_template_child (widget_class, SteadReceiptDialog, total);
  gtk_widget_class_bind_template_child (widget_class, SteadReceiptDialog, day);
  gtk_widget_class_bind_template_child (widget_class, SteadReceiptDialog, supplier);
  gtk_widget_class_bind_template_child (widget_class, SteadReceiptDialog, reference);
  gtk_widget_class_bind_template_child (widget_class, SteadReceiptDialog, note);
  gtk_widget_class_bind_template_child (widget_class, SteadReceiptDialog, gift);
  gtk_widget_class_bind_template_child (widget_class, SteadReceiptDialog, lines);
  gtk_widget_class_bind_template_child (widget_class, SteadReceiptDialog, person);
  gtk_widget_class_bind_template_child (widget_class, SteadReceiptDialog, advisor);
  gtk_widget_class_bind_template_child (widget_class, SteadReceiptDialog, line_buttons);
  gtk_widget_class_bind_template_child (widget_class, SteadReceiptDialog, sign_box);
  gtk_widget_class_bind_template_child (widget_class, SteadReceiptDialog, pictures);
  gtk_widget_class_bind_template_callback (widget_class, add_line_cb);
  gtk_widget_class_bind_template_callback (widget_class, new_item_cb);
  gtk_widget_class_bind_template_callback (widget_class, sign_cb);
}

static void
stead_receipt_dialog_init (SteadReceiptDialog *self)
{
  self->rows = g_ptr_array_new ();
  self->advisors = g_ptr_array_new ();
  gtk_widget_init_template (GTK_WIDGET (self));
}

static SteadReceipt *
load_receipt (SteadStore *store,
              gint64      receipt_id,
              GError    **error)
{
  SteadReceipt *receipt;

  if (receipt_id > 0)
    return stead_receipt_repo_get (store, receipt_id, error);
  receipt = stead_receipt_new ();
  receipt->day = stead_store_get_today (store);
  return receipt;
}

void
stead_receipt_dialog_show (GtkWidget *parent,
                           SteadDesk *desk,
                           gint64     receipt_id,
                           gint64     item_id)
{
  SteadStore *store = stead_desk_get_store (desk);
  g_autoptr(GError) error = NULL;
  SteadReceipt *receipt = load_receipt (store, receipt_id, &error);
  GPtrArray *items = receipt != NULL ? stead_item_repo_list (store, &error) : NULL;
  SteadReceiptDialog *self;

  if (items == NULL)
    {
      g_clear_pointer (&receipt, stead_receipt_free);
      stead_desk_say (desk, error->message, FALSE);
      return;
    }
  self = g_object_new (STEAD_TYPE_RECEIPT_DIALOG, "title", receipt_id > 0 ? _("Receipt") : _("New receipt"),
                       "delete-label", receipt_id > 0 ? _("Delete receipt") : NULL, NULL);
  self->receipt = receipt;
  self->items = items;
  stead_field_set_today (self->day, stead_store_get_today (store));
  fill_people (self, store);
  show_receipt (self, desk, item_id);
  stead_dialog_present (STEAD_DIALOG (self), parent, desk);
  self->changed_id = g_signal_connect_swapped (desk, "changed", G_CALLBACK (items_changed_cb), self);
  update_total (self);
  gtk_widget_grab_focus (GTK_WIDGET (self->supplier));
}
