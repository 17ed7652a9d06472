/* stead-fund-form.h - a dialog of Fund: fields in two columns, and what Save does with them. */
#pragma once

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
SteadField    *stead_fund_form_add (SteadFundForm *form, SteadDesk *desk, const char *label, SteadFieldKind kind);
GtkDropDown   *stead_fund_form_add_choice (SteadFundForm *form, const char *label, const char * const *words, guint chosen);

G_END_DECLS
