/* stead-form.h - a dialog of fields in two columns, and what Save does with them. */
#pragma once

#include "app/keep/stead-pick.h"
#include "app/stead-dialog.h"
#include "app/stead-field.h"

G_BEGIN_DECLS

#define STEAD_TYPE_FORM (stead_form_get_type ())
G_DECLARE_FINAL_TYPE (SteadForm, stead_form, STEAD, FORM, SteadDialog)

typedef gboolean (*SteadFormSave) (SteadForm *form, gpointer data, GError **error);

/* @delete_label, @remove: (nullable): nothing can be deleted; @data: (transfer full) */
SteadForm      *stead_form_new        (const char     *title,
                                       const char     *save_label,
                                       const char     *delete_label,
                                       SteadFormSave   save,
                                       SteadFormSave   remove,
                                       gpointer        data,
                                       GDestroyNotify  destroy);

/* Fields stand in two columns, in the order in which they are added. */
SteadField     *stead_form_add        (SteadForm *form, SteadDesk *desk, const char *label, SteadFieldKind kind);
/* A text over the whole width. */
SteadField     *stead_form_add_wide   (SteadForm *form, const char *label);
/* @m: in meters; NAN leaves the field empty */
SteadField     *stead_form_add_length (SteadForm *form, SteadDesk *desk, const char *label, double m);
GtkDropDown    *stead_form_add_choice (SteadForm *form, const char *label, const char * const *words, guint chosen);
/* The same for long texts: over the whole width */
GtkDropDown    *stead_form_add_wide_choice (SteadForm *form, const char *label, const char * const *words, guint chosen);
SteadPick      *stead_form_add_pick   (SteadForm *form, const char *label);
/* Over the whole width; @css: (nullable): "caution", "soft" */
GtkCheckButton *stead_form_add_check  (SteadForm *form, const char *label, gboolean is_on);
void            stead_form_add_text   (SteadForm *form, const char *text, const char *css);
/* The same with markup. */
void            stead_form_add_markup (SteadForm *form, const char *markup, const char *css);
/* Room for several lines, over the whole width; @text: (nullable) */
GtkTextView    *stead_form_add_lines  (SteadForm *form, const char *label, const char *text);
void            stead_form_add_widget (SteadForm *form, GtkWidget *widget);
/* Leaves the rest of the row empty. */
void            stead_form_skip       (SteadForm *form);

/* A field in a table: its column and row name it, so that its label is said but not shown. */
SteadField     *stead_form_cell       (const char *label, SteadFieldKind kind);

/* For save() and remove(), once the form is presented: the farm that it is about, and one
 * named step of change; see stead_desk_act(). */
SteadStore     *stead_form_get_store  (SteadForm *form);
gboolean        stead_form_act        (SteadForm     *form,
                                       const char    *step,
                                       SteadDeskAct   act,
                                       gpointer       data,
                                       GError       **error) G_GNUC_WARN_UNUSED_RESULT;
/* Shows a refusal where it was typed, instead of below.  Returns: %FALSE, for save() */
gboolean        stead_form_fail_at    (SteadField *field, GError **error);

G_END_DECLS
