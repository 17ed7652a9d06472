/* stead-picture.c - a picture from a file, made small enough to be kept in the farm. */
#include "config.h"

#include <gdk-pixbuf/gdk-pixbuf.h>
#include <glib/gi18n-lib.h>

#include "app/stead-picture.h"

/* Beyond these no photo of a farm lies: not even looked into. */
#define MOST_BYTES (100 * 1000 * 1000)
#define MOST_SIDE 30000
#define MOST_PIXELS (200 * 1000 * 1000)

static const char * const qualities[] = { "88", "80", "70", "60", "50" };

void
stead_picture_free (SteadPicture *picture)
{
  if (picture == NULL)
    return;
  g_clear_pointer (&picture->jpeg, g_bytes_unref);
  g_free (picture);
}

static gboolean
refuse (GError     **error,
        const char  *message)
{
  g_set_error_literal (error, G_IO_ERROR, G_IO_ERROR_INVALID_DATA, message);
  return FALSE;
}

/* --- reading ---------------------------------------------------------------------- */

static gboolean
check_file (const char  *path,
            int         *out_width,
            int         *out_height,
            GError     **error)
{
  g_autoptr(GFile) file = g_file_new_for_path (path);
  g_autoptr(GFileInfo) info = g_file_query_info (file, G_FILE_ATTRIBUTE_STANDARD_SIZE "," G_FILE_ATTRIBUTE_STANDARD_TYPE,
                                                 G_FILE_QUERY_INFO_NONE, NULL, error);
  int width = 0, height = 0;

  if (info == NULL)
    return FALSE;
  if (g_file_info_get_file_type (info) != G_FILE_TYPE_REGULAR)
    return refuse (error, _("This is no file. Choose a picture."));
  if (g_file_info_get_size (info) > MOST_BYTES)
    return refuse (error, _("This picture is far too large. Choose one of at most 100 MB."));
  if (gdk_pixbuf_get_file_info (path, &width, &height) == NULL)
    return refuse (error, _("This file is no picture that can be read. Choose a JPEG or PNG picture."));
  if (width < 1 || height < 1 || width > MOST_SIDE || height > MOST_SIDE || (gint64) width * height > MOST_PIXELS)
    return refuse (error, _("This picture has far too many dots. Make it smaller first, such as 4,000 dots wide."));
  *out_width = width;
  *out_height = height;
  return TRUE;
}

static GdkPixbuf *
read_small (const char  *path,
            GError     **error)
{
  g_autoptr(GdkPixbuf) pixbuf = NULL;
  g_autoptr(GError) problem = NULL;
  int width, height;

  if (!check_file (path, &width, &height, error))
    return NULL;
  if (MAX (width, height) > STEAD_PICTURE_SIDE)
    pixbuf = gdk_pixbuf_new_from_file_at_scale (path, STEAD_PICTURE_SIDE, STEAD_PICTURE_SIDE, TRUE, &problem);
  else
    pixbuf = gdk_pixbuf_new_from_file (path, &problem);
  if (pixbuf != NULL)
    return gdk_pixbuf_apply_embedded_orientation (pixbuf);
  if (g_error_matches (problem, GDK_PIXBUF_ERROR, GDK_PIXBUF_ERROR_INSUFFICIENT_MEMORY))
    refuse (error, _("There is not enough memory for this picture. Choose a smaller one."));
  else
    refuse (error, _("This picture is damaged and cannot be read to its end. Choose another one."));
  return NULL;
}

/* --- writing ---------------------------------------------------------------------- */

/* JPEG knows no transparency: what shines through is white, as paper is. */
static GdkPixbuf *
on_white (GdkPixbuf *pixbuf)
{
  if (!gdk_pixbuf_get_has_alpha (pixbuf))
    return g_object_ref (pixbuf);
  return gdk_pixbuf_composite_color_simple (pixbuf, gdk_pixbuf_get_width (pixbuf), gdk_pixbuf_get_height (pixbuf),
                                            GDK_INTERP_BILINEAR, 255, 1024, 0xffffff, 0xffffff);
}

static GBytes *
encode (GdkPixbuf   *pixbuf,
        const char  *quality,
        GError     **error)
{
  char *buffer = NULL;
  gsize size = 0;

  if (!gdk_pixbuf_save_to_buffer (pixbuf, &buffer, &size, "jpeg", error, "quality", quality, NULL))
    return NULL;
  return g_bytes_new_take (buffer, size);
}

/* First fewer details, then fewer dots, until it is small enough; a picture of nothing
 * but noise ends there too, since it shrinks to a quarter in every third turn. */
static SteadPicture *
shrink (GdkPixbuf  *first,
        GError    **error)
{
  g_autoptr(GdkPixbuf) pixbuf = on_white (first);

  while (pixbuf != NULL)
    {
      int width = gdk_pixbuf_get_width (pixbuf), height = gdk_pixbuf_get_height (pixbuf);
      g_autoptr(GdkPixbuf) smaller = NULL;

      for (gsize i = 0; i < G_N_ELEMENTS (qualities); i++)
        {
          g_autoptr(GBytes) jpeg = encode (pixbuf, qualities[i], error);
          SteadPicture *picture;

          if (jpeg == NULL)
            return NULL;
          if (g_bytes_get_size (jpeg) >= STEAD_PICTURE_BYTES)
            continue;
          picture = g_new0 (SteadPicture, 1);
          *picture = (SteadPicture) { g_steal_pointer (&jpeg), width, height };
          return picture;
        }
      smaller = gdk_pixbuf_scale_simple (pixbuf, MAX (1, width * 4 / 5), MAX (1, height * 4 / 5), GDK_INTERP_BILINEAR);
      g_set_object (&pixbuf, smaller);
    }
  refuse (error, _("There is not enough memory for this picture. Choose a smaller one."));
  return NULL;
}

SteadPicture *
stead_picture_read (const char  *path,
                    GError     **error)
{
  g_autoptr(GdkPixbuf) pixbuf = NULL;

  g_return_val_if_fail (path != NULL, NULL);
  pixbuf = read_small (path, error);
  return pixbuf != NULL ? shrink (pixbuf, error) : NULL;
}

/* --- in a thread -------------------------------------------------------------------- */

static void
read_in_thread (GTask        *task,
                gpointer      source,
                gpointer      path,
                GCancellable *cancellable)
{
  GError *error = NULL;
  SteadPicture *picture = stead_picture_read (path, &error);

  if (picture != NULL)
    g_task_return_pointer (task, picture, (GDestroyNotify) stead_picture_free);
  else
    g_task_return_error (task, error);
}

void
stead_picture_read_async (const char          *path,
                          GCancellable        *cancellable,
                          GAsyncReadyCallback  callback,
                          gpointer             data)
{
  g_autoptr(GTask) task = g_task_new (NULL, cancellable, callback, data);

  g_return_if_fail (path != NULL);
  g_task_set_task_data (task, g_strdup (path), g_free);
  g_task_run_in_thread (task, read_in_thread);
}

SteadPicture *
stead_picture_read_finish (GAsyncResult  *result,
                           GError       **error)
{
  g_return_val_if_fail (g_task_is_valid (result, NULL), NULL);
  return g_task_propagate_pointer (G_TASK (result), error);
}
