source "T1" {
  text = "a book"
}
