/* stead-picture.h - a picture from a file, made small enough to be kept in the farm.
 *
 * What comes out is a JPEG of at most 1280 pixels on its longer side and fewer than
 * 100,000 bytes, turned the right way up.  It is drawn anew, so that nothing else
 * that a camera wrote into the file, such as the place, is kept.
 */
#pragma once

#include <gio/gio.h>

G_BEGIN_DECLS

#define STEAD_PICTURE_SIDE 1280
#define STEAD_PICTURE_BYTES 100000

typedef struct
{
  GBytes *jpeg;
  int     width, height;
} SteadPicture;

void stead_picture_free (SteadPicture *picture);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadPicture, stead_picture_free)

/* Returns: (transfer full): %NULL with a message for the person: no picture, damaged, far
 * too large.  May be called from any thread. */
SteadPicture *stead_picture_read (const char  *path,
                                  GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* The same in a thread of its own. */
void          stead_picture_read_async  (const char          *path,
                                         GCancellable        *cancellable,
                                         GAsyncReadyCallback  callback,
                                         gpointer             data);
SteadPicture *stead_picture_read_finish (GAsyncResult  *result,
                                         GError       **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
