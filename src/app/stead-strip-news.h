/* stead-strip-news.h - tells the posts of the strip what is new in their places. */
#pragma once

#include "app/stead-desk.h"
#include "app/stead-strip.h"

G_BEGIN_DECLS

#define STEAD_TYPE_STRIP_NEWS (stead_strip_news_get_type ())
G_DECLARE_FINAL_TYPE (SteadStripNews, stead_strip_news, STEAD, STRIP_NEWS, GObject)

/* From now on @strip says what the farm on @desk says.  Of a farm just opened it tells at
 * once, of a change after the frame in which its place shows it. */
SteadStripNews *stead_strip_news_new (SteadStrip *strip, SteadDesk *desk);

G_END_DECLS
