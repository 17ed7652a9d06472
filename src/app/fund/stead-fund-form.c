/* stead-fund-form.c - a dialog of Fund: fields in two columns, and what Save does with them. */
#include "config.h"

#include "app/fund/stead-fund-form.h"
#include "app/stead-ui.h"

struct _SteadFundForm
{
  SteadDialog        parent_instance;

  GtkGrid           *grid;
  int                n;
  SteadFundFormSave  save, remove;
  gpointer           data;
  GDestroyNotify     destroy;
};

G_DEFINE_FINAL_TYPE (SteadFundForm, stead_fund_form, STEAD_TYPE_DIALOG)

static gboolean
stead_fund_form_do_save (SteadDialog  *dialog,
                         GError      **error)
{
  SteadFundForm *self = STEAD_FUND_FORM (dialog);

  return self->save (self, self->data, error);
}

static gboolean
stead_fund_form_do_remove (SteadDialog  *dialog,
                           GError      **error)
{
  SteadFundForm *self = STEAD_FUND_FORM (dialog);

  return self->remove != NULL && self->remove (self, self->data, error);
}

static void
stead_fund_form_finalize (GObject *object)
{
  SteadFundForm *self = STEAD_FUND_FORM (object);

  if (self->destroy != NULL)
    self->destroy (self->data);
  G_OBJECT_CLASS (stead_fund_form_parent_class)->finalize (object);
}

static void
stead_fund_form_class_init (SteadFundFormClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = stead_fund_form_finalize;
  STEAD_DIALOG_CLASS (klass)->save = stead_fund_form_do_save;
  STEAD_DIALOG_CLASS (klass)->remove = stead_fund_form_do_remove;
}

static void
stead_fund_form_init (SteadFundForm *self)
{
  self->grid = GTK_GRID (gtk_grid_new ());
  gtk_grid_set_row_spacing (self->grid, 12);
  gtk_grid_set_column_spacing (self->grid, 18);
  gtk_grid_set_column_homogeneous (self->grid, TRUE);
  g_object_set (self, "content", self->grid, NULL);
}

SteadFundForm *
stead_fund_form_new (const char        *title,
                     const char        *save_label,
                     const char        *delete_label,
                     SteadFundFormSave  save,
                     SteadFundFormSave  remove,
                     gpointer           data,
                     GDestroyNotify     destroy)
{
  SteadFundForm *self = g_object_new (STEAD_TYPE_FUND_FORM, "title", title, "save-label", save_label,
                                      "delete-label", delete_label, "default-width", 620, NULL);

  self->save = save;
  self->remove = remove;
  self->data = data;
  self->destroy = destroy;
  return self;
}

static void
attach (SteadFundForm *self,
        GtkWidget     *child)
{
  gtk_grid_attach (self->grid, child, self->n % 2, self->n / 2, 1, 1);
  self->n++;
}

SteadField *
stead_fund_form_add (SteadFundForm  *form,
                     SteadDesk      *desk,
                     const char     *label,
                     SteadFieldKind  kind)
{
  SteadField *field = STEAD_FIELD (stead_field_new (label, kind));

  if (kind == STEAD_FIELD_DAY)
    stead_field_set_today (field, stead_store_get_today (stead_desk_get_store (desk)));
  if (kind == STEAD_FIELD_MONEY)
    stead_field_set_currency (field, stead_desk_get_farm (desk)->currency);
  if (kind == STEAD_FIELD_QUANTITY)
    stead_field_set_unit (field, stead_unit_default (STEAD_DIMENSION_LENGTH, stead_desk_get_farm (desk)->units));
  attach (form, GTK_WIDGET (field));
  return field;
}

GtkDropDown *
stead_fund_form_add_choice (SteadFundForm      *form,
                            const char         *label,
                            const char * const *words,
                            guint               chosen)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 4);
  GtkWidget *name = gtk_label_new_with_mnemonic (label);
  GtkWidget *choice = gtk_drop_down_new_from_strings (words);

  gtk_label_set_xalign (GTK_LABEL (name), 0);
  gtk_label_set_mnemonic_widget (GTK_LABEL (name), choice);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (choice), chosen);
  gtk_box_append (GTK_BOX (box), name);
  gtk_box_append (GTK_BOX (box), choice);
  stead_ui_name_drop_downs (box);
  attach (form, box);
  return GTK_DROP_DOWN (choice);
}
