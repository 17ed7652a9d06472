/* stead-fund-form.h - a dialog of Fund: fields in two columns, and what Save does with them. */
#pragma once

#include "app/keep/stead-pick.h"
#include "app/stead-dialog.h"
#include "app/stead-field.h"

G_BEGIN_DECLS

#define STEAD_TYPE_FUND_FORM (stead_fund_form_get_type ())
G_DECLARE_FINAL_TYPE (SteadFundForm, stead_fund_form, STEAD, FUND_FORM, SteadDialog)

typedef gboolean (*SteadFundFormSave) (SteadFundForm *form, gpointer data, GError **error);

/* @data: (transfer full) */
SteadFundForm *stead_fund_form_new (const char        *title,
                                    const char        *save_label,
                                    const char        *delete_label,
                                    SteadFundFormSave  save,
                                    SteadFundFormSave  remove,
                                    gpointer           data,
                                    GDestroyNotify     destroy);
/* Fields stand in two columns, in the order in which they are added. */
SteadField    *stead_fund_form_add (SteadFundForm *form, SteadDesk *desk, const char *label, SteadFieldKind kind);
GtkDropDown   *stead_fund_form_add_choice (SteadFundForm *form, const char *label, const char * const *words, guint chosen);
SteadPick     *stead_fund_form_add_pick  (SteadFundForm *form, const char *label);
GtkCheckButton *stead_fund_form_add_check (SteadFundForm *form, const char *label, gboolean is_on);
/* Over the whole width; @css: (nullable): "caution", "soft" */
void           stead_fund_form_add_text  (SteadFundForm *form, const char *text, const char *css);
/* Leaves the rest of the row empty. */
void           stead_fund_form_skip      (SteadFundForm *form);
void           stead_fund_form_add_widget (SteadFundForm *form, GtkWidget *widget);

/* A field in a table: its column and row name it, so that its label is said but not shown. */
SteadField    *stead_fund_form_cell      (const char *label, SteadFieldKind kind);

/* Shows a refusal where it was typed, instead of below.  Returns: %FALSE, for save() */
gboolean       stead_fund_form_fail_at   (SteadField *field, GError **error);

G_END_DECLS
