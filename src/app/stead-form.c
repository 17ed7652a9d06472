/* stead-form.c - a dialog of fields in two columns, and what Save does with them. */
#include "config.h"

#include "app/stead-form.h"

#include <math.h>

#include "app/make/stead-make-parts.h"
#include "app/stead-ui.h"

struct _SteadForm
{
  SteadDialog     parent_instance;

  GtkGrid        *grid;
  int             n;             /* places taken, two a row */
  SteadFormSave   save, remove;
  gpointer        data;
  GDestroyNotify  destroy;
};

G_DEFINE_FINAL_TYPE (SteadForm, stead_form, STEAD_TYPE_DIALOG)

static gboolean
stead_form_do_save (SteadDialog  *dialog,
                    GError      **error)
{
  SteadForm *self = STEAD_FORM (dialog);

  return self->save (self, self->data, error);
}

static gboolean
stead_form_do_remove (SteadDialog  *dialog,
                      GError      **error)
{
  SteadForm *self = STEAD_FORM (dialog);

  return self->remove != NULL && self->remove (self, self->data, error);
}

static void
stead_form_finalize (GObject *object)
{
  SteadForm *self = STEAD_FORM (object);

  if (self->destroy != NULL)
    self->destroy (self->data);
  G_OBJECT_CLASS (stead_form_parent_class)->finalize (object);
}

static void
stead_form_class_init (SteadFormClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = stead_form_finalize;
  STEAD_DIALOG_CLASS (klass)->save = stead_form_do_save;
  STEAD_DIALOG_CLASS (klass)->remove = stead_form_do_remove;
  gtk_widget_class_set_template_from_resource (widget_class, STEAD_UI ("stead-form.ui"));
  gtk_widget_class_bind_template_child (widget_class, SteadForm, grid);
}

static void
stead_form_init (SteadForm *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

SteadForm *
stead_form_new (const char     *title,
                const char     *save_label,
                const char     *delete_label,
                SteadFormSave   save,
                SteadFormSave   remove,
                gpointer        data,
                GDestroyNotify  destroy)
{
  SteadForm *self = g_object_new (STEAD_TYPE_FORM, "title", title, "save-label", save_label,
                                  "delete-label", delete_label, "default-width", 620, NULL);

  self->save = save;
  self->remove = remove;
  self->data = data;
  self->destroy = destroy;
  return self;
}

static void
attach (SteadForm *self,
        GtkWidget *child)
{
  gtk_grid_attach (self->grid, child, self->n % 2, self->n / 2, 1, 1);
  self->n++;
}

SteadField *
stead_form_add (SteadForm      *form,
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

SteadField *
stead_form_add_wide (SteadForm  *form,
                     const char *label)
{
  GtkWidget *field = stead_field_new (label, STEAD_FIELD_TEXT);

  stead_form_add_widget (form, field);
  return STEAD_FIELD (field);
}

SteadField *
stead_form_add_length (SteadForm  *form,
                       SteadDesk  *desk,
                       const char *label,
                       double      m)
{
  SteadField *field = stead_form_add (form, desk, label, STEAD_FIELD_QUANTITY);

  if (!isnan (m))
    stead_field_show_quantity (field, m);
  return field;
}

/* A label over a choice; @out_choice: the choice. */
static GtkWidget *
choice_new (const char          *label,
            const char * const  *words,
            guint                chosen,
            GtkDropDown        **out_choice)
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
  *out_choice = GTK_DROP_DOWN (choice);
  return box;
}

GtkDropDown *
stead_form_add_choice (SteadForm          *form,
                       const char         *label,
                       const char * const *words,
                       guint               chosen)
{
  GtkDropDown *choice;

  attach (form, choice_new (label, words, chosen, &choice));
  return choice;
}

GtkDropDown *
stead_form_add_wide_choice (SteadForm          *form,
                            const char         *label,
                            const char * const *words,
                            guint               chosen)
{
  GtkDropDown *choice;

  stead_form_add_widget (form, choice_new (label, words, chosen, &choice));
  return choice;
}

SteadPick *
stead_form_add_pick (SteadForm  *form,
                     const char *label)
{
  GtkWidget *pick = stead_pick_new (label);

  attach (form, pick);
  return STEAD_PICK (pick);
}

void
stead_form_skip (SteadForm *form)
{
  form->n += form->n % 2;
}

void
stead_form_add_widget (SteadForm *form,
                       GtkWidget *widget)
{
  stead_form_skip (form);
  gtk_grid_attach (form->grid, widget, 0, form->n / 2, 2, 1);
  form->n += 2;
}

GtkCheckButton *
stead_form_add_check (SteadForm  *form,
                      const char *label,
                      gboolean    is_on)
{
  GtkWidget *check = gtk_check_button_new_with_label (label);

  gtk_check_button_set_active (GTK_CHECK_BUTTON (check), is_on);
  stead_form_add_widget (form, check);
  return GTK_CHECK_BUTTON (check);
}

void
stead_form_add_text (SteadForm  *form,
                     const char *text,
                     const char *css)
{
  stead_form_add_widget (form, stead_make_label (text, css));
}

void
stead_form_add_markup (SteadForm  *form,
                       const char *markup,
                       const char *css)
{
  GtkWidget *label = stead_make_label ("", css);

  gtk_label_set_markup (GTK_LABEL (label), markup);
  stead_form_add_widget (form, label);
}

GtkTextView *
stead_form_add_lines (SteadForm  *form,
                      const char *label,
                      const char *text)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 4);
  GtkWidget *name = gtk_label_new_with_mnemonic (label);
  GtkWidget *frame = gtk_scrolled_window_new ();
  GtkWidget *lines = g_object_new (GTK_TYPE_TEXT_VIEW, "wrap-mode", GTK_WRAP_WORD_CHAR, "accepts-tab", FALSE,
                                   "top-margin", 6, "bottom-margin", 6, "left-margin", 8, "right-margin", 8, NULL);

  gtk_label_set_xalign (GTK_LABEL (name), 0);
  gtk_label_set_mnemonic_widget (GTK_LABEL (name), lines);
  gtk_accessible_update_relation (GTK_ACCESSIBLE (lines), GTK_ACCESSIBLE_RELATION_LABELLED_BY, name, NULL, -1);
  gtk_text_buffer_set_text (gtk_text_view_get_buffer (GTK_TEXT_VIEW (lines)), text != NULL ? text : "", -1);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (frame), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_min_content_height (GTK_SCROLLED_WINDOW (frame), 84);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (frame), lines);
  gtk_box_append (GTK_BOX (box), name);
  gtk_box_append (GTK_BOX (box), frame);
  stead_form_add_widget (form, box);
  return GTK_TEXT_VIEW (lines);
}

SteadStore *
stead_form_get_store (SteadForm *form)
{
  g_return_val_if_fail (STEAD_IS_FORM (form), NULL);

  return stead_desk_get_store (stead_dialog_get_desk (STEAD_DIALOG (form)));
}

gboolean
stead_form_act (SteadForm     *form,
                const char    *step,
                SteadDeskAct   act,
                gpointer       data,
                GError       **error)
{
  g_return_val_if_fail (STEAD_IS_FORM (form), FALSE);

  return stead_desk_act (stead_dialog_get_desk (STEAD_DIALOG (form)), step, act, data, error);
}

gboolean
stead_form_fail_at (SteadField  *field,
                         GError     **error)
{
  if (error != NULL && *error != NULL)
    stead_field_set_error (field, (*error)->message);
  g_clear_error (error);
  gtk_widget_grab_focus (GTK_WIDGET (field));
  return FALSE;
}

static void
hide_label (GtkWidget  *widget,
            const char *text)
{
  if (GTK_IS_ENTRY (widget))
    stead_ui_name (widget, text);
  else if (GTK_IS_LABEL (widget) && g_str_equal (gtk_label_get_text (GTK_LABEL (widget)), text))
    gtk_widget_set_visible (widget, FALSE);
  else
    for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL; child = gtk_widget_get_next_sibling (child))
      hide_label (child, text);
}

SteadField *
stead_form_cell (const char     *label,
                      SteadFieldKind  kind)
{
  GtkWidget *field = stead_field_new (label, kind);

  hide_label (field, label);
  return STEAD_FIELD (field);
}
