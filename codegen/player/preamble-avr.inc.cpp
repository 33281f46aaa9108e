// Tables stay in program memory, where the chip reads them with instructions of their own.
#define IN_FLASH PROGMEM
#define READ_8(entry) pgm_read_byte(&(entry))
#define READ_16(entry) pgm_read_word(&(entry))
#define READ_32(entry) pgm_read_dword(&(entry))
#define COUNT_OF(table) (sizeof(table) / sizeof((table)[0]))
//? clips
#define READ_CLIP(entry) reinterpret_cast<DrawClip *>(pgm_read_word(&(entry)))
//.
//? eased
#define READ_EASING(entry) static_cast<const int32_t *>(pgm_read_ptr(&(entry)))
//.
