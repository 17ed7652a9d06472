/* stead-output.c - what was made, put onto the disk whole or not at all. */
#include "config.h"

#include "paper/stead-output.h"
#include "paper/stead-paper-error.h"

#include <glib/gi18n-lib.h>

void
stead_output_set_error (GError     **error,
                        const char  *path,
                        const char  *reason)
{
  g_autofree char *name = g_filename_display_basename (path);

  /* Translators: a file's name, then the system's reason. */
  g_set_error (error, STEAD_PAPER_ERROR, STEAD_PAPER_ERROR_WRITE,
               _("“%s” could not be written (%s). Choose another place, or make room. "
                 "A file of that name that was there before is unchanged."), name, reason);
}

gboolean
stead_output_write (const char  *path,
                    GBytes      *bytes,
                    GError     **error)
{
  g_autoptr(GError) own = NULL;
  gsize size;
  const char *data = g_bytes_get_data (bytes, &size);

  g_return_val_if_fail (path != NULL, FALSE);
  if (g_file_test (path, G_FILE_TEST_IS_DIR))
    {
      stead_output_set_error (error, path, _("it is a folder"));
      return FALSE;
    }
  if (g_file_set_contents_full (path, data, (gssize) size,
                                G_FILE_SET_CONTENTS_CONSISTENT | G_FILE_SET_CONTENTS_DURABLE, 0600, &own))
    return TRUE;
  stead_output_set_error (error, path, own->message);
  return FALSE;
}

cairo_status_t
stead_output_collect (void                *closure,
                      const unsigned char *data,
                      unsigned int         length)
{
  g_byte_array_append (closure, data, length);
  return CAIRO_STATUS_SUCCESS;
}
