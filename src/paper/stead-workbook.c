/* stead-workbook.c - the farm's records as one workbook. */
#include "config.h"

#include "answer/stead-imprint.h"
#include "answer/stead-workbook-answer.h"
#include "paper/stead-output.h"
#include "paper/stead-workbook.h"
#include "paper/stead-xlsx.h"

#include <glib/gi18n-lib.h>

/* Columns of the months that a chart is made of. */
#define COLUMN_EGGS 1
#define COLUMN_IN 5

GBytes *
stead_workbook_new (SteadStore  *store,
                    gboolean     names,
                    GError     **error)
{
  g_autoptr(SteadImprint) imprint = stead_imprint_new (store, error);
  g_autoptr(SteadWorkbookAnswer) answer = imprint != NULL ? stead_workbook_answer_new (store, names, error) : NULL;
  g_autofree SteadXlsxSheet *sheets = NULL;
  g_autofree char *title = NULL;

  if (answer == NULL)
    return NULL;
  sheets = g_new0 (SteadXlsxSheet, answer->sheets->len);
  for (guint i = 0; i < answer->sheets->len; i++)
    sheets[i].log = answer->sheets->pdata[i];
  sheets[answer->production].charts[0] = COLUMN_EGGS;
  sheets[answer->production].charts[1] = COLUMN_IN;
  /* Translators: title of a workbook; the farm's name. */
  title = g_strdup_printf (_("Records of %s"), imprint->farm_name);
  return stead_xlsx_from_sheets (sheets, answer->sheets->len, title, imprint->farm_name, error);
}

gboolean
stead_workbook_save (SteadStore  *store,
                     gboolean     names,
                     const char  *path,
                     GError     **error)
{
  g_autoptr(GBytes) bytes = stead_workbook_new (store, names, error);

  return bytes != NULL && stead_output_write (path, bytes, error);
}
